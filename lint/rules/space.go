package rules

import (
	"strings"

	"homerun/schema"
	"homerun/schema/plant"
)

// deepestSpace bounds how far spaces inside spaces are followed: records may
// state a ring.
const deepestSpace = 16

// within says whether a space is another or lies inside it.
func within(inner, outer *plant.Space) bool {
	for range deepestSpace {
		if inner == outer {
			return inner != nil
		}
		if inner == nil {
			return false
		}
		inner = inner.Inside
	}
	return false
}

// touch says whether one of two spaces is the other or lies inside it: who is
// in the part is in the whole, so records may name either.
func touch(a, b *plant.Space) bool { return within(a, b) || within(b, a) }

// reaches says whether a pathway passes a space.
func reaches(w *plant.Pathway, space *plant.Space) bool {
	for _, s := range w.Through {
		if touch(s, space) {
			return true
		}
	}
	return false
}

// meet says whether two pathways share a space.
func meet(a, b *plant.Pathway) bool {
	for _, s := range a.Through {
		if reaches(b, s) {
			return true
		}
	}
	return false
}

// spaceNames lists the labels of spaces.
func spaceNames(spaces []*plant.Space) string {
	names := make([]string, len(spaces))
	for i, s := range spaces {
		names[i] = schema.Printable(s.Label)
	}
	return strings.Join(names, ", ")
}
