package unit_test

import "homerun/schema/unit"

// quantity is one kind of quantity seen through plain integers, so that a property is
// written once for all of them.
type quantity struct {
	name  string
	parse func(string) (int64, error)
	text  func(int64, unit.System) string
	both  func(v, limit int64, sys unit.System) (string, string)
	units map[string]factor // what each unit is worth, from the definitions cited at factors
	floor int64             // the least value there is; 0: none
}

// nothing reports whether v lies below the least value there is.
func (q quantity) nothing(v int64) bool { return q.floor != 0 && v < q.floor }

// factor says that x of a unit are x*num/den + add of the integer kept.
type factor struct{ num, den, add int64 }

type quantityType interface {
	~int64
	Text(unit.System) string
}

func texts[T quantityType](v int64, sys unit.System) string { return T(v).Text(sys) }

func parses[T quantityType](parse func(string) (T, error)) func(string) (int64, error) {
	return func(s string) (int64, error) {
		v, err := parse(s)
		return int64(v), err
	}
}

// quantities lists every kind. The worth of the units is written out again from the
// definitions: the SI prefixes, the international yard and pound agreement of 1959
// (1 yd = 0.9144 m), and the definition of the degree Fahrenheit and of the kelvin
// (0 °C = 273.15 K, SI Brochure, 9th edition, 2.3.1).
func quantities() []quantity {
	return []quantity{
		{"length", parses(unit.ParseLength), texts[unit.Length], besideLength, map[string]factor{
			"nm": {1, 1, 0}, "um": {1e3, 1, 0}, "mm": {1e6, 1, 0}, "cm": {1e7, 1, 0}, "m": {1e9, 1, 0}, "km": {1e12, 1, 0},
			"yd": {914_400_000, 1, 0}, "ft": {914_400_000, 3, 0}, "in": {914_400_000, 36, 0}, "mi": {914_400_000 * 1760, 1, 0},
		}, 0},
		{"temperature", parses(unit.ParseTemperature), texts[unit.Temperature], besideTemperature, map[string]factor{
			"C": {9000, 1, 0}, "F": {9000 * 5, 9, -32 * 5000}, "K": {9000, 1, -2_458_350},
		}, -2_458_350},
		{"power", parses(unit.ParsePower), texts[unit.Power], besidePower, map[string]factor{
			"uW": {1, 1, 0}, "mW": {1e3, 1, 0}, "W": {1e6, 1, 0}, "kW": {1e9, 1, 0},
		}, 0},
		{"current", parses(unit.ParseCurrent), texts[unit.Current], besideCurrent, map[string]factor{
			"uA": {1, 1, 0}, "mA": {1e3, 1, 0}, "A": {1e6, 1, 0},
		}, 0},
		{"frequency", parses(unit.ParseFrequency), texts[unit.Frequency], besideFrequency, map[string]factor{
			"Hz": {1, 1, 0}, "kHz": {1e3, 1, 0}, "MHz": {1e6, 1, 0}, "GHz": {1e9, 1, 0},
		}, 0},
		{"loss", parses(unit.ParseLoss), texts[unit.Loss], besideLoss, map[string]factor{"dB": {1e4, 1, 0}}, 0},
		{"level", parses(unit.ParseLevel), texts[unit.Level], besideLevel, map[string]factor{"dBmV": {1e4, 1, 0}}, 0},
		{"period", parses(unit.ParsePeriod), texts[unit.Period], besidePeriod, map[string]factor{
			"s": {1, 1, 0}, "min": {60, 1, 0}, "h": {3600, 1, 0}, "d": {86400, 1, 0},
		}, 0},
		{"angle", parses(unit.ParseAngle), texts[unit.Angle], besideAngle, map[string]factor{"deg": {1e3, 1, 0}}, 0},
	}
}

func besideLength(v, l int64, s unit.System) (string, string) {
	return unit.Length(v).Beside(unit.Length(l), s)
}

func besideTemperature(v, l int64, s unit.System) (string, string) {
	return unit.Temperature(v).Beside(unit.Temperature(l), s)
}

func besidePower(v, l int64, s unit.System) (string, string) {
	return unit.Power(v).Beside(unit.Power(l), s)
}

func besideCurrent(v, l int64, s unit.System) (string, string) {
	return unit.Current(v).Beside(unit.Current(l), s)
}

func besideFrequency(v, l int64, s unit.System) (string, string) {
	return unit.Frequency(v).Beside(unit.Frequency(l), s)
}

func besideLoss(v, l int64, s unit.System) (string, string) {
	return unit.Loss(v).Beside(unit.Loss(l), s)
}

func besideLevel(v, l int64, s unit.System) (string, string) {
	return unit.Level(v).Beside(unit.Level(l), s)
}

func besidePeriod(v, l int64, s unit.System) (string, string) {
	return unit.Period(v).Beside(unit.Period(l), s)
}

func besideAngle(v, l int64, s unit.System) (string, string) {
	return unit.Angle(v).Beside(unit.Angle(l), s)
}
