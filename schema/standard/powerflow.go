package standard

import (
	"math"

	"homerun/schema/unit"
)

// PowerFlow is power on its way from a source to a device, with the working: what the source
// gives is what the device has and what the cable turns to heat.
type PowerFlow struct {
	Volts       float64 // V, at the source
	Ohms        float64 // R, of the whole path there and back
	Amperes     float64 // I
	Watts       float64 // V*I, at the source
	Lost        float64 // I^2*R
	DeviceWatts float64 // V*I - I^2*R
	DeviceVolts float64 // V - I*R
}

// flow fills in the terms from V, R and I.
func flow(volts, ohms, amperes float64) PowerFlow {
	return PowerFlow{
		Volts: volts, Ohms: ohms, Amperes: amperes, Watts: volts * amperes, Lost: amperes * amperes * ohms,
		DeviceWatts: volts*amperes - amperes*amperes*ohms, DeviceVolts: volts - amperes*ohms,
	}
}

// sound reports whether volts and ohms can stand in the formulas.
func sound(volts, ohms float64) bool {
	return volts > 0 && volts <= 1000 && ohms >= 0 && ohms <= 1e6
}

// Deliver returns what reaches the device where the source gives a power at a voltage, as its
// type or class grants at the least: I = P/V, and P - I^2*R is left. ok is false for absurd
// input, and where the path eats up the whole voltage.
func Deliver(power unit.Power, volts, ohms float64) (f PowerFlow, ok bool) {
	if !sound(volts, ohms) || power < 0 {
		return PowerFlow{}, false
	}
	f = flow(volts, ohms, power.Watts()/volts)
	if f.DeviceVolts < 0 {
		return PowerFlow{}, false
	}
	return f, true
}

// Draw returns what flows where the device takes a power at its own port: of the two currents
// that solve P = V*I - I^2*R it is the smaller, (V - sqrt(V^2 - 4*R*P))/(2*R), written as
// 2*P/(V + sqrt(V^2 - 4*R*P)) so that it holds for a path without resistance too. ok is false
// for absurd input, and where no current brings that much through: P is over V^2/(4*R).
func Draw(needs unit.Power, volts, ohms float64) (f PowerFlow, ok bool) {
	if !sound(volts, ohms) || needs < 0 {
		return PowerFlow{}, false
	}
	p := needs.Watts()
	root := volts*volts - 4*ohms*p
	if root < 0 {
		return PowerFlow{}, false
	}
	return flow(volts, ohms, 2*p/(volts+math.Sqrt(root))), true
}

// MostOhms returns the greatest resistance of the path over which a source that gives a power
// at a voltage still leaves a device what it needs: (P - needs)*V^2/P^2. ok is false for
// absurd input and where the device needs more than the source gives.
func MostOhms(power, needs unit.Power, volts float64) (ohms float64, ok bool) {
	if !sound(volts, 0) || power <= 0 || needs < 0 || needs > power {
		return 0, false
	}
	i := power.Watts() / volts
	return (power.Watts() - needs.Watts()) / (i * i), true
}

// PathOhms returns the resistance of the path of the power from the loop resistance of one
// pair, there and back: half of it where two pairs are powered, since the two wires of a
// pair lie in parallel both ways, and a quarter where four are. ok is false for another
// number of pairs and for an absurd loop.
func PathOhms(loop float64, pairs int) (ohms float64, ok bool) {
	if !sound(1, loop) || (pairs != 2 && pairs != 4) {
		return 0, false
	}
	return loop / float64(pairs), true
}
