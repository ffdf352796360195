package rules

import (
	"fmt"

	"homerun/lint"
	"homerun/schema"
	"homerun/schema/plant"
	"homerun/schema/standard"
	"homerun/schema/unit"
)

// CategoryFibreMixed finds fibres of different cores that meet in one channel.
var CategoryFibreMixed = &lint.Rule{
	Name: "category-fibre-mixed", Title: "Checks that fibres of different cores, or multimode and single-mode, do not meet in one channel",
	Severity: lint.Nonconformity, Reach: lint.Along, Check: categoryFibreMixed,
}

func categoryFibreMixed(p *lint.Pass) {
	g := newLight(p)
	told := make(map[[2]*schema.Record]bool)
	g.Each(func(_ *plant.Link, channels []*plant.Channel) {
		for _, c := range channels {
			var last glass
			for _, next := range g.glasses(c) {
				if f, ok := meeting(last, next); ok && !told[[2]*schema.Record{last.Record, next.Record}] {
					told[[2]*schema.Record{last.Record, next.Record}] = true
					told[[2]*schema.Record{next.Record, last.Record}] = true
					p.Report(f)
				}
				last = next
			}
		}
	})
	g.hardware()
}

// A glass is one cable of a channel: a run or a cord, and its class.
type glass struct {
	schema.Entry
	class standard.Fibre
}

// glasses are the cables of a channel from end to end, without the cords that
// do not say what they are.
func (g *light) glasses(c *plant.Channel) []glass {
	var all []glass
	for _, part := range c.Parts {
		if part.Cord != nil {
			if class, known := g.of.get(part.Cord.Cable); known {
				all = append(all, glass{part.Cord.Entry, class})
			}
			continue
		}
		for _, r := range part.Runs() {
			all = append(all, glass{r.Entry, g.of.at(r.Cable)})
		}
	}
	return all
}

// meeting is the finding about two neighbours. A cord is what can be exchanged,
// so the finding is about it; of two alike it is about the one whose label comes
// last, from whichever end the channel is read.
func meeting(a, b glass) (f lint.Finding, ok bool) {
	joint, src, known := standard.Join(a.class, b.class)
	if !known || joint == standard.SameCore {
		return f, false
	}
	if first := a.Kind.Name == schema.KindCord; first == (b.Kind.Name == schema.KindCord) && a.Name() > b.Name() || first && b.Kind.Name != schema.KindCord {
		a, b = b, a
	}
	f = lint.About(b.Entry)
	f.Severity = degree(src)
	f.Message = fmt.Sprintf("%s: %s %s meets %s %s: %s", schema.Printable(b.Name()), b.class, b.Kind.Name, a.class, a.Kind.Name+" "+schema.Printable(a.Name()), joint)
	f.Working = []lint.Term{term(a.Kind.Name+" "+schema.Printable(a.Name()), glassWords(a.class)), term(b.Kind.Name+" "+schema.Printable(b.Name()), glassWords(b.class))}
	f.Result, f.Limit, f.Source = joint.String(), standard.SameCore.String(), src.String()
	f.Next = "exchange one of them for the class of the other, or put a media converter between them"
	f.Key = []string{a.Name()}
	f.Related = []schema.Note{note(a.Entry, "meets it")}
	return f, true
}

// glassWords are a class and its core.
func glassWords(class standard.Fibre) string {
	core, src, _ := class.Core()
	text := fmt.Sprintf("%s, core %s um", class, decimals(float64(core)/float64(unit.Micrometre), 1))
	if !src.Sure() {
		text += " or so"
	}
	return text
}

// hardware finds panels and outlets that are made for a fibre that meets the
// runs behind them as badly. Their field says what they are made for, not what
// the glass in them is, so that is an observation.
func (g *light) hardware() {
	if !g.Any() {
		return
	}
	for _, h := range g.pass.Plant.Holders {
		v := h.Own(schema.PanelFibre.Name)
		if v == nil || v.Bad {
			continue
		}
		class, err := standard.ParseFibre(v.Text)
		if err != nil {
			continue
		}
		if f, ok := g.behind(h, class); ok {
			g.pass.Report(f)
		}
	}
}

func (g *light) behind(h *plant.Holder, class standard.Fibre) (f lint.Finding, ok bool) {
	var first, last *plant.Run
	var src standard.Source
	runs := 0
	for i := range h.Ports {
		r := h.Ports[i].Rear
		if r == nil || r == last || !r.Live() {
			continue
		}
		last = r
		own, known := g.of.get(r.Cable)
		joint, from, _ := standard.Join(class, own)
		if !known || joint == standard.SameCore {
			continue
		}
		if first == nil {
			first, src = r, from
		}
		runs++
	}
	if first == nil {
		return f, false
	}
	own := g.of.at(first.Cable)
	field, _ := h.Kind.Field(schema.PanelFibre.Name)
	f = lint.AboutField(h.Entry, field)
	f.Severity = lint.Observation
	f.Message = fmt.Sprintf("%s: made for %s, and %s of another core, the first is %s in %s", schema.Printable(h.Label), class,
		counted(runs, "run behind it is", "runs behind it are"), schema.Printable(first.Label), own)
	f.Working = []lint.Term{term(h.Kind.Name+" "+schema.Printable(h.Label), glassWords(class)), term("run "+schema.Printable(first.Label), glassWords(own))}
	f.Result, f.Limit, f.Source = own.String(), class.String(), src.String()
	f.Next = "exchange the adapters, or correct fibre"
	f.Excess = float64(runs)
	f.Related = []schema.Note{note(first.Entry, "the first run")}
	return f, true
}
