package unit

import (
	"fmt"
	"strings"
)

// Conductor is the size and make of the conductors of a cable.
type Conductor struct {
	Gauge    int  // American wire gauge; a larger number is a thinner wire
	Stranded bool // false: solid
}

// The gauges that are read: what communications and power-limited cable is made in,
// with room on both sides (common practice).
const (
	thickest = 6
	thinnest = 40
)

// ParseConductor reads "23 AWG solid" or "26 AWG stranded", gauges 6 to 40. The error
// is an *Error.
func ParseConductor(s string) (Conductor, error) {
	const example = "23 AWG solid"
	if s == "" || len(s) > maxText {
		return Conductor{}, refuse(s, "conductor "+shown(s)+" is not a gauge and a make", example)
	}
	c, ok := looseConductor(s)
	switch {
	case c.Gauge >= thickest && c.Gauge <= thinnest && !ok:
		return Conductor{}, refuse(s, "conductor "+shown(s)+" does not say solid or stranded",
			c.String(), Conductor{Gauge: c.Gauge, Stranded: true}.String())
	case !ok:
		return Conductor{}, refuse(s, "conductor "+shown(s)+" is not a gauge and a make", example, "26 AWG stranded")
	case c.Gauge < thickest || c.Gauge > thinnest:
		return Conductor{}, refuse(s, fmt.Sprintf("conductor gauge %d AWG is not between %d and %d", c.Gauge, thickest, thinnest), example)
	case c.String() != s:
		return Conductor{}, refuse(s, "conductor "+shown(s)+" is not in the form that is read", c.String())
	}
	return c, nil
}

// looseConductor reads a conductor in any case and spacing, so that a refusal can say
// the right form. Without its make, the gauge alone comes back and ok is false.
func looseConductor(s string) (Conductor, bool) {
	low := strings.ToLower(strings.TrimSpace(s))
	low = strings.TrimSpace(strings.TrimPrefix(low, "awg"))
	n := digits(low)
	if n == 0 || n > 2 {
		return Conductor{}, false
	}
	word := strings.Join(strings.Fields(strings.TrimPrefix(strings.TrimSpace(low[n:]), "awg")), " ")
	if word == "" {
		return Conductor{Gauge: whole(low[:n])}, false
	}
	if word != "solid" && word != "stranded" {
		return Conductor{}, false
	}
	return Conductor{Gauge: whole(low[:n]), Stranded: word == "stranded"}, true
}

// String returns the conductor as it is read, "23 AWG solid".
func (c Conductor) String() string {
	if c.Stranded {
		return fmt.Sprintf("%d AWG stranded", c.Gauge)
	}
	return fmt.Sprintf("%d AWG solid", c.Gauge)
}
