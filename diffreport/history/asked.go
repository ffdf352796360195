package history

import (
	"slices"

	"homerun/schema"
)

// Asked is what a history is to be told of.
type Asked struct {
	// Label is that of a record of any kind.
	Label string
	// Port, where it is not 0, asks for the cables that ended at this port of
	// what bears the label, instead of all that happened to that itself.
	Port int64
	// Contents asks also for what came into a space and left it.
	Contents bool
	// On is the id of a commit at which the labels are to be told that the
	// things bore; empty asks for none.
	On string
}

// Interest says how much has to be known around a label.
type Interest uint8

// The interests: Itself is what bears the label, Ties also what names it.
const (
	Itself Interest = iota
	Ties
)

func (a *Asked) interest() Interest {
	if a.Port != 0 || a.Contents {
		return Ties
	}
	return Itself
}

// tied is the field by which a record lies where it is asked about, under the
// label that the place bore; empty where it lies elsewhere.
func (a *Asked) tied(r *schema.Record, label string) string {
	if r == nil {
		return ""
	}
	for i := range r.Values {
		v := &r.Values[i]
		if !v.Bad && (a.Port != 0 && a.onPort(v, label) || a.Port == 0 && inSpace(v, label)) {
			return v.Field.Name
		}
	}
	return ""
}

func (a *Asked) onPort(v *schema.Value, label string) bool {
	return v.Field.Type == schema.PortReference && v.Text == label && v.Number <= a.Port && a.Port <= v.Last
}

// inSpace says whether a value is a label or holds it in a list. Ports are not
// in a space by themselves.
func inSpace(v *schema.Value, label string) bool {
	return v.Field.Type == schema.Reference && v.Text == label || v.Field.Type == schema.References && slices.Contains(v.List, label)
}
