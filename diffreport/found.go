package diffreport

import (
	"fmt"
	"strconv"

	"homerun/schema"
	"homerun/schema/plant"
)

// found pairs records that are gone with records that are new where both state
// the same and are connected the same way: then only the label differs. A
// relabelled room makes its panels comparable, and those their runs, so it goes
// round until nothing more is found.
func (c *comparison) found() {
	for again := true; again; {
		again = false
		for _, k := range loose(c) {
			if c.foundOf(k) {
				again = true
			}
		}
	}
}

// loose lists the kinds with records that have no partner on either side, in
// the order in which labels carry over.
func loose(c *comparison) []*schema.Kind {
	var gone, kinds []*schema.Kind
	collect := func(s side, into []*schema.Kind) []*schema.Kind {
		for i := range c.sides[s] {
			if k := c.sides[s][i].Kind; c.partner[s][i] < 0 && (len(into) == 0 || into[len(into)-1] != k) {
				into = append(into, k)
			}
		}
		return into
	}
	if gone = collect(earlier, gone); len(gone) == 0 {
		return nil
	}
	seen := make(map[*schema.Kind]bool)
	for _, k := range gone {
		seen[k] = true
	}
	for _, k := range collect(later, nil) {
		if seen[k] {
			kinds = append(kinds, k)
			seen[k] = false
		}
	}
	return kinds
}

// candidates are records without a partner that state the same.
type candidates [2][]int

func (c *comparison) foundOf(k *schema.Kind) bool {
	alike := make(map[string]*candidates)
	var order []string
	wanted := [2]map[string]bool{{}, {}}
	for _, s := range []side{earlier, later} {
		for i := range c.sides[s] {
			r := c.sides[s][i]
			if r.Kind != k || c.partner[s][i] >= 0 || r.Label == "" {
				continue
			}
			sum := c.recordKey(s, r.Record)
			if alike[sum] == nil {
				alike[sum] = &candidates{}
				order = append(order, sum)
			}
			alike[sum][s] = append(alike[sum][s], i)
			wanted[s][r.Label] = true
		}
	}
	var tied [2]map[string][]string
	some := false
	for _, sum := range order {
		group := alike[sum]
		if len(group[earlier]) == 0 || len(group[later]) == 0 {
			continue
		}
		if tied[0] == nil {
			tied[earlier], tied[later] = c.ties(earlier, wanted[earlier]), c.ties(later, wanted[later])
		}
		if c.match(group, tied) {
			some = true
		}
	}
	return some
}

// match pairs the candidates of one group. Runs and cords are known by their
// two ends, which they state; anything else by what is tied to it, of which more
// than half has to agree, and what nothing is tied to only where it is the one.
func (c *comparison) match(group *candidates, tied [2]map[string][]string) bool {
	chosen := make(map[int][]int)
	claimed := make(map[int]int)
	choose := func(b, h int) {
		chosen[b] = append(chosen[b], h)
		claimed[h]++
	}
	if single := len(group[earlier]) == 1 && len(group[later]) == 1; single || c.byEnds(group) {
		b, h := group[earlier][0], group[later][0]
		if single && c.placed(b) && (c.byEnds(group) || c.tiesOf(tied, earlier, b)+c.tiesOf(tied, later, h) == 0) {
			choose(b, h)
		}
	}
	if !c.byEnds(group) {
		for pair, n := range c.votes(group, tied) {
			if 2*n > max(c.tiesOf(tied, earlier, pair[0]), c.tiesOf(tied, later, pair[1])) {
				choose(pair[0], pair[1])
			}
		}
	}
	some := false
	for _, b := range group[earlier] {
		if hs := chosen[b]; len(hs) == 1 && claimed[hs[0]] == 1 {
			c.join(b, hs[0], c.tieWords(b, c.tiesOf(tied, earlier, b)))
			some = true
		}
	}
	return some
}

func (c *comparison) tiesOf(tied [2]map[string][]string, s side, i int) int {
	return len(tied[s][c.sides[s][i].Label])
}

// byEnds says whether the candidates are cables, known by where they end.
func (c *comparison) byEnds(group *candidates) bool {
	k := c.sides[earlier][group[earlier][0]].Kind.Name
	return k == schema.KindRun || k == schema.KindCord
}

// placed says whether a run or cord states an end to be known by; anything
// else is known by what it states.
func (c *comparison) placed(b int) bool {
	switch r := c.sides[earlier][b]; r.Kind.Name {
	case schema.KindRun:
		return r.Own(schema.RunFrom.Name) != nil || r.Own(schema.RunTo.Name) != nil
	case schema.KindCord:
		return r.Own(schema.CordFrom.Name) != nil || r.Own(schema.CordTo.Name) != nil
	}
	return true
}

func (c *comparison) tieWords(b, n int) string {
	k := c.sides[earlier][b].Kind
	switch {
	case k.Name == schema.KindRun || k.Name == schema.KindCord:
		return "its ends are the same"
	case n == 0:
		return "all else about it is the same, and of nothing else"
	}
	return fmt.Sprintf("all else about it is the same, and so is what belongs to it: %s", counted(n, "record"))
}

// votes counts for each pair of candidates the ties that agree.
func (c *comparison) votes(group *candidates, tied [2]map[string][]string) map[[2]int]int {
	bearers := make(map[string][]int)
	for _, h := range group[later] {
		for _, tie := range tied[later][c.sides[later][h].Label] {
			for _, form := range forms(tie) {
				bearers[form] = append(bearers[form], h)
			}
		}
	}
	votes := make(map[[2]int]int)
	for _, b := range group[earlier] {
		for _, tie := range tied[earlier][c.sides[earlier][b].Label] {
			seen := -1
			for _, form := range forms(tie) {
				// A tie that many candidates share tells none of them apart.
				if hs := bearers[form]; len(hs) == 1 && hs[0] != seen {
					votes[[2]int{b, hs[0]}]++
					seen = hs[0]
				}
			}
		}
	}
	return votes
}

// A tie is written as the place it is tied to, who is tied there, and for a
// cable where its other end is, so that a relabelled cable still counts.
const (
	tieSplit = "\x06"
	tieOther = "\x07"
)

func forms(tie string) []string {
	for i := range len(tie) {
		if tie[i] == tieSplit[0] {
			return []string{"n" + tie[:i], "f" + tie[i+1:]}
		}
	}
	return []string{"n" + tie}
}

// ties lists for each wanted label what refers to it.
func (c *comparison) ties(s side, wanted map[string]bool) map[string][]string {
	tied := make(map[string][]string)
	for i := range c.sides[s] {
		r := c.sides[s][i]
		for j := range r.Values {
			v := &r.Values[j]
			if v.Bad || !refers(v.Field) {
				continue
			}
			if v.List == nil && wanted[v.Text] {
				tied[v.Text] = append(tied[v.Text], c.tie(s, r, v))
			}
			for at, label := range v.List {
				if wanted[label] {
					tied[label] = append(tied[label], v.Field.Name+strconv.Itoa(at)+tieOther+c.canon(s, r.Label))
				}
			}
		}
		if in := r.bundle(); in != "" && wanted[in] {
			tied[in] = append(tied[in], c.member(s, r))
		}
	}
	return tied
}

// tie is a reference by a single label. The two ends of a cable may be written
// either way round, so the field's name is left out for ports.
func (c *comparison) tie(s side, r subject, v *schema.Value) string {
	if v.Field.Type != schema.PortReference {
		return v.Field.Name + tieOther + c.canon(s, r.Label)
	}
	at := strconv.FormatInt(v.Number, 10)
	near := at + tieOther + c.canon(s, r.Label)
	other := r.Own(schema.RunTo.Name)
	if v.Field.Name == schema.RunTo.Name {
		other = r.Own(schema.RunFrom.Name)
	}
	if other == nil || other.Bad {
		return near
	}
	return near + tieSplit + at + tieOther + c.canon(s, other.Text) + ":" + strconv.FormatInt(other.Number, 10)
}

// member is a run of a bundle, by its label and by its ends.
func (c *comparison) member(s side, r subject) string {
	near := "run" + tieOther + c.canon(s, r.Label)
	from, to := r.Own(schema.RunFrom.Name), r.Own(schema.RunTo.Name)
	if from == nil || to == nil {
		return near
	}
	return near + tieSplit + c.valueKey(s, r.Record, from) + tieOther + c.valueKey(s, r.Record, to)
}

// portsTied counts the runs and cords on a holder's ports.
func portsTied(h *plant.Holder) (runs, cords int) {
	for i := range h.Ports {
		p := &h.Ports[i]
		if p.Rear != nil {
			runs++
		}
		if p.Onward != nil && p.Onward != p.Rear {
			runs++
		}
		if p.Front != nil {
			cords++
		}
	}
	return runs, cords
}
