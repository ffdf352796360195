package standard

import "homerun/schema/unit"

// FibrePart is one length of fibre in a link: a run or a cord.
type FibrePart struct {
	Name   string // how the working names it: a label
	Fibre  Fibre
	Length unit.Length
}

// FibreJoints are alike connections or splices in a link.
type FibreJoints struct {
	Name   string
	Count  int
	Each   unit.Loss // what one loses: the standard's most, or what was measured
	Source Source
}

// Connections returns mated pairs at the most that the family lets one lose. For no family
// Each and Source are empty, and LossOfFibre gives no answer.
func Connections(r Regime, n int) FibreJoints {
	each, src, _ := ConnectionAttenuation(r)
	return FibreJoints{Name: "connections", Count: n, Each: each, Source: src}
}

// Splices returns splices at the most that the family lets one lose; for no family as
// Connections.
func Splices(r Regime, n int) FibreJoints {
	each, src, _ := SpliceAttenuation(r)
	return FibreJoints{Name: "splices", Count: n, Each: each, Source: src}
}

// FibreLink is what the loss of a fibre link is computed from.
type FibreLink struct {
	Regime     Regime
	Wavelength Wavelength
	Parts      []FibrePart
	Joints     []FibreJoints
}

// FibreTerm is one line of the sum: Length x PerKilometre, or Count x Each.
type FibreTerm struct {
	Name         string
	Fibre        Fibre // none for connections and splices
	Length       unit.Length
	PerKilometre unit.Loss
	Count        int // 0 for fibre
	Each         unit.Loss
	Loss         float64 // dB
	Source       Source
}

// FibreLoss is the sum L*attenuation + connections + splices. It is the limit of a Tier 1
// test of the link and, for an application, the most that the link loses where every part
// keeps its standard.
type FibreLoss struct {
	Terms      []FibreTerm
	Total      float64 // dB
	Confidence Confidence

	exact int64 // in 10^-13 dB, which a nanometre of any attenuation is a whole number of
}

// exactPerLoss is how many of the exact steps a unit.Loss has; exactPerDecibel, a decibel.
const (
	exactPerLoss    = 1_000_000_000
	exactPerDecibel = 10_000 * exactPerLoss
)

// AsLimit returns the sum as a limit for a measured loss, rounded down to what a record can
// state: a measured loss passes it if and only if it passes the exact sum.
func (l FibreLoss) AsLimit() unit.Loss { return unit.Loss(l.exact / exactPerLoss) }

// AsLoss returns the sum as a loss to hold against a limit, rounded up to what a limit can
// state: it keeps a limit if and only if the exact sum does.
func (l FibreLoss) AsLoss() unit.Loss {
	return unit.Loss((l.exact + exactPerLoss - 1) / exactPerLoss)
}

// The bounds within which the sum stays exact.
const (
	longestLink = 1000 * unit.Kilometre
	mostJoints  = 1000
	greatest    = 100 * unit.Decibel // of one joint
)

// LossOfFibre adds up the loss of a fibre link. ok is false where the family states no
// attenuation for a part at the wavelength, where a length, count or loss is negative or
// absurd, and where a joint has no source: no sum is given with a part left out.
func LossOfFibre(l FibreLink) (sum FibreLoss, ok bool) {
	sum.Confidence = Confirmed
	var length unit.Length
	for _, p := range l.Parts {
		per, src, ok := Attenuation(l.Regime, p.Fibre, l.Wavelength)
		if !ok || p.Length < 0 || p.Length > longestLink-length {
			return FibreLoss{}, false
		}
		length += p.Length
		exact := int64(p.Length) * int64(per/tenth)
		sum = sum.with(FibreTerm{Name: p.Name, Fibre: p.Fibre, Length: p.Length, PerKilometre: per, Source: src}, exact)
	}
	joints := 0
	for _, j := range l.Joints {
		if j.Count < 0 || j.Count > mostJoints-joints || j.Each < 0 || j.Each > greatest || j.Source.Confidence == 0 {
			return FibreLoss{}, false
		}
		joints += j.Count
		if j.Count > 0 {
			sum = sum.with(FibreTerm{Name: j.Name, Count: j.Count, Each: j.Each, Source: j.Source}, int64(j.Count)*int64(j.Each)*exactPerLoss)
		}
	}
	return sum, true
}

// with returns the sum with one more term.
func (l FibreLoss) with(t FibreTerm, exact int64) FibreLoss {
	t.Loss = float64(exact) / exactPerDecibel
	l.Terms = append(l.Terms, t)
	l.exact += exact
	l.Total = float64(l.exact) / exactPerDecibel
	l.Confidence = max(l.Confidence, t.Source.Confidence)
	return l
}
