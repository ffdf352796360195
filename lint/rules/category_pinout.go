package rules

import (
	"fmt"
	"strconv"
	"strings"

	"homerun/lint"
	"homerun/schema"
	"homerun/schema/plant"
	"homerun/schema/standard"
)

// CategoryPinout compares the wiring of the jacks at both ends of a link.
var CategoryPinout = &lint.Rule{
	Name: "category-pinout", Title: "Checks that the jacks at both ends of a link are wired alike",
	Severity: lint.Nonconformity, Reach: lint.Along, Check: categoryPinout,
}

// jacks are two records with jacks that links lie between.
type jacks struct{ near, far *plant.Holder }

// crossedLinks are the links between jacks that are wired differently.
type crossedLinks struct {
	jacks
	first *plant.Link
	count int
}

func categoryPinout(p *lint.Pass) {
	wiring := make(map[*plant.Holder]standard.Pinout)
	for _, h := range p.Plant.Holders {
		if v := h.Own(schema.PanelPinout.Name); v != nil && !v.Bad {
			wiring[h], _ = standard.ParsePinout(v.Text)
		}
	}
	if len(wiring) == 0 {
		return
	}
	of := make(map[jacks]*crossedLinks)
	var all []*crossedLinks
	for _, l := range p.Plant.Links {
		if l.From == nil || l.To == nil || !l.Live() || l.Medium() != plant.TwistedPair {
			continue
		}
		between := jacks{l.From.Holder, l.To.Holder}
		near, far := wiring[between.near], wiring[between.far]
		if near == 0 || far == 0 || near == far {
			continue
		}
		found := of[between]
		if found == nil {
			found = &crossedLinks{jacks: between, first: l}
			of[between], all = found, append(all, found)
		}
		found.count++
	}
	for _, found := range all {
		p.Report(found.finding(wiring[found.near], wiring[found.far]))
	}
}

// finding is one about all links between the same two records.
func (c *crossedLinks) finding(near, far standard.Pinout) lint.Finding {
	field, _ := c.far.Kind.Field(schema.PanelPinout.Name)
	_, src, _ := near.Pair(1)
	f := lint.AboutField(c.far.Entry, field)
	f.Severity = degree(src)
	f.Message = fmt.Sprintf("%s: wired %s, %s at the other end of %s is wired %s", schema.Printable(c.far.Label), far, schema.Printable(c.near.Label),
		counted(c.count, "link", "links"), near)
	f.Working = []lint.Term{
		term(c.near.Kind.Name+" "+schema.Printable(c.near.Label)+", "+near.String(), pinWords(near)),
		term(c.far.Kind.Name+" "+schema.Printable(c.far.Label)+", "+far.String(), pinWords(far)),
	}
	for pin := 1; pin <= 8; pin++ {
		a, _, _ := near.Pair(pin)
		b, _, _ := far.Pair(pin)
		if a != b {
			f.Working = append(f.Working, term(fmt.Sprintf("pin %d", pin), fmt.Sprintf("pair %d at one end, pair %d at the other", a, b)))
		}
	}
	f.Result, f.Limit, f.Source = far.String(), near.String(), src.String()
	f.Next = "terminate one of the two anew, as the other is; or correct pinout"
	f.Excess = float64(c.count)
	f.Key = []string{c.near.Label}
	f.Related = []schema.Note{note(c.near.Entry, "the other end"), note(c.first.Lead().Entry, "the first run")}
	return f
}

// pinWords lists the pairs on the pins of a jack.
func pinWords(p standard.Pinout) string {
	pairs := make([]string, 8)
	for i := range pairs {
		pair, _, _ := p.Pair(i + 1)
		pairs[i] = strconv.Itoa(pair)
	}
	return "pins 1 to 8 carry pairs " + strings.Join(pairs, " ")
}
