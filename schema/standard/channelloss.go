package standard

import (
	"math"

	"homerun/schema/unit"
)

// CablePart is one length of cable in a channel: the fixed cable or a cord.
type CablePart struct {
	Name        string // how the working names it: a label, or "cords, assumed"
	Category    Category
	Length      unit.Length
	Derating    int              // percent that it loses more than fixed cable; 0 for fixed cable
	Temperature unit.Temperature // below 20 C counts as 20 C
	Shield      Shield
}

// ChannelParts is what the loss of a channel is computed from.
type ChannelParts struct {
	Regime      Regime
	Frequency   unit.Frequency
	Cables      []CablePart
	Connections []Category // one for each mated connection, by its hardware
}

// LossTerm is one line of the sum: Length/100 m x PerHundred x Derating x Heat, or the loss
// of connections.
type LossTerm struct {
	Name       string
	Length     unit.Length
	PerHundred float64 // dB for 100 m at 20 C; for connections, dB for each
	Derating   float64 // 1.2 for a cord that loses 20 % more
	Heat       float64 // k(T)
	Count      int     // number of connections; 0 for cable
	Loss       float64 // dB
	Source     Source
}

// ChannelLoss is the computed loss of a channel with the terms that it is made of.
type ChannelLoss struct {
	Terms      []LossTerm
	Total      float64 // dB
	Confidence Confidence
}

// LossOfChannel adds up the loss of a channel as it is built. Connections of one category
// share a line. ok is false where a part has no curve in the family of standards, or no
// length: no sum is given with a part left out.
func LossOfChannel(p ChannelParts) (sum ChannelLoss, ok bool) {
	if p.Frequency < unit.Megahertz {
		return ChannelLoss{}, false
	}
	sum.Confidence = Confirmed
	for _, part := range p.Cables {
		term, ok := part.term(p.Regime, p.Frequency)
		if !ok {
			return ChannelLoss{}, false
		}
		sum.add(term)
	}
	for c := Cat3; c.known(); c++ {
		term, ok := connectionTerm(p, c)
		if !ok {
			return ChannelLoss{}, false
		}
		if term.Count > 0 {
			sum.add(term)
		}
	}
	for _, c := range p.Connections {
		if !c.known() {
			return ChannelLoss{}, false
		}
	}
	return sum, true
}

// add appends a term.
func (s *ChannelLoss) add(t LossTerm) {
	s.Terms = append(s.Terms, t)
	s.Total += t.Loss
	s.Confidence = max(s.Confidence, t.Source.Confidence)
}

// term computes the line of a cable.
func (p CablePart) term(r Regime, f unit.Frequency) (LossTerm, bool) {
	per, src, ok := CableLoss(r, p.Category, f)
	if !ok || p.Length < 0 || p.Derating < 0 {
		return LossTerm{}, false
	}
	heat, heatSource := HeatFactor(r, p.Temperature, p.Shield)
	if heat > 1 {
		src.Confidence = Weakest(src, heatSource)
	}
	t := LossTerm{Name: p.Name, Length: p.Length, PerHundred: per, Derating: 1 + float64(p.Derating)/100, Heat: heat, Source: src}
	t.Loss = p.Length.Metres() / 100 * per * t.Derating * heat
	return t, true
}

// connectionTerm computes the line of the connections of one category; Count is 0 where
// there are none. The floor of 0.1 dB under ConnectionLoss is left out, as it is in the
// limits of channels: with it a full channel would fail its own limit at low frequencies.
func connectionTerm(p ChannelParts, c Category) (LossTerm, bool) {
	n := 0
	for _, have := range p.Connections {
		if have == c {
			n++
		}
	}
	if n == 0 {
		return LossTerm{}, true
	}
	k, src, ok := hardwareRoot(p.Regime, c)
	each := k * math.Sqrt(p.Frequency.Megahertz())
	return LossTerm{Name: "connections, category " + c.String(), PerHundred: each, Derating: 1, Heat: 1, Count: n, Loss: float64(n) * each, Source: src}, ok
}

// CordDerating returns how much more than fixed cable a cord loses, in percent. ok is false
// for a gauge that was not found.
func CordDerating(c Category, w unit.Conductor) (percent int, src Source, ok bool) {
	src = Source{Body: "ANSI/TIA", Edition: "568-C.2", Clause: "cord insertion loss", Confidence: Confirmed}
	switch {
	case !w.Stranded:
		return 0, src, true
	case c.eight():
		return eightCordDerating(w)
	case w.Gauge == 24:
		return 20, src, true
	case w.Gauge == 26:
		return 50, src, true
	default:
		return 0, Source{}, false
	}
}

// eightCordDerating is the row of category 8.
func eightCordDerating(w unit.Conductor) (percent int, src Source, ok bool) {
	src = Source{Body: "ANSI/TIA", Edition: "568.2-D", Clause: "category 8 cord insertion loss", Confidence: FromMemory}
	switch {
	case w.Gauge >= 22 && w.Gauge <= 24:
		return 20, src, true
	case w.Gauge == 28:
		return 95, src, true
	default:
		return 0, Source{}, false
	}
}

// AssumedCordDerating returns what the limits themselves assume of a cord that is not
// recorded: 20 % in ANSI/TIA (10 m of cord count as 12 m in its channel limit), 50 % in
// ISO/IEC (10 m count as 15 m).
func AssumedCordDerating(r Regime) (percent int, src Source, ok bool) {
	switch r {
	case TIA:
		return 20, tiaChannel, true
	case ISO:
		return 50, isoChannel, true
	default:
		return 0, Source{}, false
	}
}
