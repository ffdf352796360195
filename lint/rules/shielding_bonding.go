package rules

import (
	"fmt"

	"homerun/lint"
	"homerun/schema"
	"homerun/schema/plant"
	"homerun/schema/standard"
)

// ShieldingBonding checks that the screens that end at a panel are bonded,
// through its rack and the busbars, as far as the primary busbar.
var ShieldingBonding = &lint.Rule{
	Name: "shielding-bonding", Title: "Checks that every screened panel is bonded through to the primary busbar",
	Severity: lint.Nonconformity, Reach: lint.Along, Safety: true, Check: shieldingBonding,
}

var bondingSource = standard.Source{
	Body: "ANSI/TIA", Edition: "607-D", Clause: "bonding of screened cabling", Confidence: standard.Confirmed,
	Note: "as quoted in the literature; the same in J-STD-607-A",
}

func shieldingBonding(p *lint.Pass) {
	screens := screenings(p.Plant)
	for _, h := range p.Plant.Holders {
		if h.Kind.Name != schema.KindPanel {
			continue
		}
		why, screened := screenedPanel(h, &screens)
		if !screened {
			continue
		}
		if path := bondOf(h); path.known && !path.reached {
			p.Report(unbonded(h, why, &path))
		}
	}
}

// screenedPanel says whether a panel has screens to bond, and how that is known:
// by its own jacks or, where it does not say, by a screened run behind it.
func screenedPanel(h *plant.Holder, screens *byCable[screening]) (why string, screened bool) {
	if word, ok := h.Screen(); ok {
		return "its jacks are " + word, word == "screened"
	}
	if lost(h.Entry, schema.PanelScreen.Field) {
		return "", false
	}
	for i := range h.Ports {
		r := h.Ports[i].Rear
		if r != nil && r.Live() && screens.at(r.Cable) == screenedPairs {
			return "run " + schema.Printable(r.Label) + " behind it is " + codeOfCable(r.Cable), true
		}
	}
	return "", false
}

// A bondPath is the way from a panel to the primary busbar.
type bondPath struct {
	// steps are the conductors, from the panel on.
	steps []lint.Term
	// end says where the way stops short.
	end            string
	reached, known bool
	notes          []schema.Note
}

// bondOf follows the bond of a panel, its own before that of its rack. A
// reference that leads nowhere leaves the path unknown: it is reported already.
func bondOf(h *plant.Holder) bondPath {
	path := bondPath{known: true, end: "no bond of the panel or its rack is recorded"}
	bar := h.Bond
	label := schema.Printable(h.Label)
	switch {
	case h.Own("bond") != nil:
		path.step("panel "+label, bar)
	case h.Own("rack") != nil && h.Rack != nil && h.Rack.Own(schema.RackBond.Name) != nil:
		bar = h.Rack.Bond
		path.steps = append(path.steps, term("panel "+label, "in rack "+schema.Printable(h.Rack.Label)))
		path.step("rack "+schema.Printable(h.Rack.Label), bar)
	case h.Damaged || h.Own("rack") != nil && (h.Rack == nil || h.Rack.Damaged):
		path.known = false
		return path
	case h.Rack != nil:
		path.steps = append(path.steps, term("panel "+label, "no bond of its own, in rack "+schema.Printable(h.Rack.Label)),
			term("rack "+schema.Printable(h.Rack.Label), "no bond recorded"))
		path.notes = append(path.notes, note(h.Rack.Entry, "its rack, without a bond"))
		return path
	default:
		path.steps = append(path.steps, term("panel "+label, "no bond of its own, no rack"))
		return path
	}
	if bar == nil {
		path.known = false
		return path
	}
	path.climb(bar)
	return path
}

// climb follows the busbars from the first one.
func (path *bondPath) climb(bar *plant.Busbar) {
	bars, reached := bar.Primary()
	path.reached = reached
	for i, b := range bars {
		if i+1 < len(bars) {
			path.step("busbar "+schema.Printable(b.Label), bars[i+1])
		}
	}
	last := bars[len(bars)-1]
	label := schema.Printable(last.Label)
	switch {
	case reached:
	case last.Bond != nil:
		path.end = fmt.Sprintf("the bonds run in a ring through busbar %s", label)
		path.step("busbar "+label, last.Bond)
	case last.Own(schema.BusbarBond.Name) != nil, last.Damaged, lost(last.Entry, schema.BusbarKind.Field):
		path.known = false
	default:
		path.end = fmt.Sprintf("the bond ends at busbar %s", label)
		path.steps = append(path.steps, term("busbar "+label, "secondary, bonded to nothing"))
	}
	path.notes = append(path.notes, note(last.Entry, "the last busbar on the way"))
}

func (path *bondPath) step(from string, to *plant.Busbar) {
	if to != nil {
		path.steps = append(path.steps, term(from, "bonded to busbar "+schema.Printable(to.Label)))
	}
}

func unbonded(h *plant.Holder, why string, path *bondPath) lint.Finding {
	f := lint.AboutField(h.Entry, schema.PanelBond.Field)
	f.Message = fmt.Sprintf("%s: screened panel, %s, must reach the primary busbar", schema.Printable(h.Label), path.end)
	f.Working = append([]lint.Term{term("screened", why)}, path.steps...)
	f.Working = append(f.Working, term("primary busbar", "not reached"))
	f.Result, f.Limit, f.Source = path.end, "a bond to the primary busbar", bondingSource.String()
	f.Next = "record the bond of the panel or its rack, and of each busbar up to the primary one; have a qualified person make what is missing"
	f.Related = path.notes
	return f
}
