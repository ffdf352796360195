package rules

import (
	"fmt"
	"strings"

	"homerun/lint"
	"homerun/schema"
	"homerun/schema/plant"
	"homerun/schema/standard"
)

// CategoryFibrePolarity follows a pair of fibres over array trunks and duplex
// cords: what one piece of equipment sends has to arrive where the other
// receives.
var CategoryFibrePolarity = &lint.Rule{
	Name: "category-fibre-polarity", Title: "Checks that the duplex cords at the ends of an array trunk bring what is sent to where it is received",
	Severity: lint.Nonconformity, Reach: lint.Along, Check: categoryFibrePolarity,
}

// An arrayType is what the record of an array cable says.
type arrayType struct {
	polarity standard.Polarity
	fibres   int
}

// A polarityCheck holds what cable types say of polarity.
type polarityCheck struct {
	*light
	arrays byCable[arrayType]
	// told are the records whose missing make was named.
	told map[*schema.Record]bool
}

func categoryFibrePolarity(p *lint.Pass) {
	var check polarityCheck
	for _, c := range p.Plant.Cables {
		word, stated := schema.CablePolarity.In(c.Record())
		if !stated {
			continue
		}
		polarity, err := standard.ParsePolarity(word)
		if err != nil {
			continue
		}
		a := arrayType{polarity: polarity, fibres: 2} // of one pair alone the types differ as of many
		if n, known := schema.CableStrands.Or(c.Record(), a.fibres); known {
			a.fibres = n
		}
		check.arrays.set(p.Plant, c, a)
	}
	if !check.arrays.some {
		return
	}
	check.light, check.told = newLight(p), make(map[*schema.Record]bool)
	check.Each(func(_ *plant.Link, channels []*plant.Channel) {
		for _, c := range channels {
			check.channel(c)
		}
	})
}

// channel judges a channel from equipment to equipment of trunks that all state
// their type and duplex cords that all state their make.
func (k *polarityCheck) channel(c *plant.Channel) {
	if !duplexEnds(c) || !k.arraysOnly(c) {
		return
	}
	w := pairWalk{position: sent}
	for _, part := range c.Parts {
		if part.Link != nil {
			if !k.trunk(&w, part.Link) {
				return
			}
			continue
		}
		if !pluggedAsPair(part.Cord) {
			return
		}
		made, known := k.made(c, part.Cord)
		if !known {
			return
		}
		w.cord(part.Cord, made)
	}
	if w.position == sent {
		k.pass.Report(w.finding(c))
	}
}

// duplexEnds says whether a channel goes from equipment to equipment, with a cord
// at each end.
func duplexEnds(c *plant.Channel) bool {
	first, last := c.Parts[0], c.Parts[len(c.Parts)-1]
	return len(c.Cords) > 1 && first.Cord != nil && last.Cord != nil &&
		c.Start != nil && c.End != nil && c.Start.Holder.IsEquipment() && c.End.Holder.IsEquipment()
}

// pluggedAsPair says whether a cord takes one port at each end, or the two of a
// pair: of anything else nobody can tell which fibre is which, nor at the
// connector of an array.
func pluggedAsPair(c *plant.Cord) bool {
	for _, row := range []plant.Row{c.FromRow, c.ToRow} {
		if len(row) == 0 || len(row) > 2 || len(row) == 2 && row[0].Number%2 == 0 {
			return false
		}
		adapter := row[0].Holder.Own(schema.PanelAdapter.Name)
		if adapter != nil && strings.HasPrefix(adapter.Text, "MPO") {
			return false
		}
	}
	return true
}

// arraysOnly says whether every run of a channel states its type.
func (k *polarityCheck) arraysOnly(c *plant.Channel) bool {
	for _, l := range c.Links {
		for _, r := range l.Runs {
			if _, stated := k.arrays.get(r.Cable); !stated {
				return false
			}
		}
	}
	return true
}

// trunk takes the pair over a link; it returns false where the type has no
// positions for the fibres that a cable states.
func (k *polarityCheck) trunk(w *pairWalk, l *plant.Link) bool {
	for _, r := range l.Runs {
		if !w.trunk(r, k.arrays.at(r.Cable)) {
			return false
		}
	}
	return true
}

// made is the make of a cord; where that is not known it is named once, at the
// type of cord.
func (k *polarityCheck) made(c *plant.Channel, cord *plant.Cord) (word string, known bool) {
	if _, array := k.arrays.get(cord.Cable); array || cord.Cable == nil {
		return "", false
	}
	word, stated := schema.CableDuplex.In(cord.Cable.Record())
	if stated {
		return word, true
	}
	n, counted := schema.CableStrands.In(cord.Cable.Record())
	if _, glass := k.of.get(cord.Cable); !glass || k.told[cord.Cable.Record()] || counted && n != 2 || lost(cord.Cable.Entry, schema.CableDuplex.Field) {
		return "", false
	}
	k.told[cord.Cable.Record()] = true
	trunk := c.Links[0].Lead()
	_, src, _ := k.arrays.at(trunk.Cable).polarity.CordsAToA()
	f := lint.AboutField(cord.Cable.Entry, schema.CableDuplex.Field)
	f.Severity = lint.Observation
	f.Message = fmt.Sprintf("%s: duplex not stated, so whether %s meets %s the right way round is not judged", schema.Printable(cord.Cable.Label),
		schema.Printable(cord.Label), schema.Printable(trunk.Label))
	f.Next = `state duplex, "A-to-B" where the cord is crossed, "A-to-A" where it is straight`
	f.Source = src.String()
	f.Key = []string{schema.CableDuplex.Name}
	f.Related = []schema.Note{note(cord.Entry, "the first cord"), note(trunk.Entry, "the array trunk")}
	k.pass.Report(f)
	return "", false
}
