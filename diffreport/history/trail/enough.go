package trail

import (
	"homerun/schema"
	"homerun/schema/plant"
)

// enough says whether an excerpt decides what happened to the label as the whole
// plants would. It errs only to the side of the whole plants.
func (e *excerpt) enough(was, is *plant.Plant) bool {
	sides := [2]*ledger{newLedger(was), newLedger(is)}
	if sides[0].twice || sides[1].twice {
		return false // which of two bearers has the label depends on all files
	}
	return e.claims(sides) && e.hardware(sides) && e.lengths(sides)
}

// ledger is the records of one excerpt by label.
type ledger struct {
	records map[string]*schema.Record
	twice   bool
}

func newLedger(p *plant.Plant) *ledger {
	l := &ledger{records: make(map[string]*schema.Record)}
	for i := range p.Problems {
		l.twice = l.twice || p.Problems[i].Code == schema.DuplicateLabel
	}
	add := func(r *schema.Record) { l.records[r.Label] = r }
	each(add, p.Spaces)
	each(add, p.Pathways)
	each(add, p.Interferences)
	each(add, p.Cables)
	each(add, p.Racks)
	each(add, p.Holders)
	each(add, p.Busbars)
	each(add, p.Bundles)
	each(add, p.Runs)
	each(add, p.Cords)
	each(add, p.Tests)
	for _, e := range append(p.Waivers[:len(p.Waivers):len(p.Waivers)], p.Policies...) {
		add(e.Record)
	}
	return l
}

func each[T plant.Item](add func(*schema.Record), items []T) {
	for _, it := range items {
		add(it.Record())
	}
}

const (
	fieldFormer = "former"
	fieldLength = "length"
)

func formerOf(r *schema.Record) string {
	if r == nil {
		return ""
	}
	if v := r.Own(fieldFormer); v != nil && !v.Bad {
		return v.Text
	}
	return ""
}

// claims says whether every former label that is newly stated is borne by a
// record of the excerpt: of any other it is not known whether somebody bears it.
func (e *excerpt) claims(sides [2]*ledger) bool {
	for s := range sides {
		for label, r := range sides[s].records {
			old := formerOf(r)
			if old == "" || old == label || formerOf(sides[1-s].records[label]) == old {
				continue
			}
			if sides[1-s].records[old] == nil {
				return false
			}
		}
	}
	return true
}

// hardware says whether nothing that the label hangs on may have been relabelled
// without saying so: such is known again by all that is tied to it.
func (e *excerpt) hardware(sides [2]*ledger) bool {
	var loose [2]map[string]bool
	kinds := [2]map[string]bool{{}, {}}
	for s := range sides {
		loose[s] = make(map[string]bool)
		for label, r := range sides[s].records {
			if sides[1-s].records[label] != nil || known(r, sides[1-s]) || r.Kind.Name == schema.KindRun || r.Kind.Name == schema.KindCord {
				continue
			}
			loose[s][label] = true
			kinds[s][r.Kind.Name] = true
		}
	}
	for s := range sides {
		for label := range sides[s].reached(e.label) {
			if loose[s][label] && kinds[1-s][sides[s].records[label].Kind.Name] {
				return false
			}
		}
	}
	return true
}

// known says whether a record without a namesake is known again by what it or
// its successor states.
func known(r *schema.Record, other *ledger) bool {
	if old := formerOf(r); old != "" && other.records[old] != nil {
		return true
	}
	for _, o := range other.records {
		if formerOf(o) == r.Label {
			return true
		}
	}
	return false
}

// reached is the labels that a record hangs on: itself, what it names, and what
// that names.
func (l *ledger) reached(label string) map[string]bool {
	seen := make(map[string]bool)
	next := []string{label}
	for _, r := range l.records {
		// Whatever it is called on the other side, it is among those that differ.
		if formerOf(r) == label {
			next = append(next, r.Label)
		}
	}
	for len(next) > 0 {
		at := next[len(next)-1]
		next = next[:len(next)-1]
		r := l.records[at]
		if r == nil || seen[at] {
			continue
		}
		seen[at] = true
		next = append(next, named(r)...)
		if r.Parent != nil {
			next = append(next, r.Parent.Label)
			next = append(next, named(r.Parent)...)
		}
	}
	return seen
}

// named is every label that a record may refer to.
func named(r *schema.Record) []string {
	var labels []string
	for i := range r.Values {
		labels = append(labels, r.Values[i].Text)
		labels = append(labels, r.Values[i].List...)
	}
	for _, in := range r.Inner {
		labels = append(labels, in.Label)
		labels = append(labels, named(in)...)
	}
	return labels
}

// lengths says whether no test can have measured the run's new length: that one
// did counts only where the run is a link of its own.
func (e *excerpt) lengths(sides [2]*ledger) bool {
	for _, t := range sides[1].records {
		if t.Kind.Name != schema.KindTest || t.Own(fieldLength) == nil {
			continue
		}
		of := t.Own(schema.TestRun.Name)
		if of != nil && (of.Text == e.label || formerOf(sides[1].records[of.Text]) == e.label) {
			return false
		}
	}
	return true
}
