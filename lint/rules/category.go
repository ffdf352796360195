package rules

import (
	"fmt"

	"homerun/lint"
	"homerun/schema"
	"homerun/schema/plant"
	"homerun/schema/standard"
)

// CategoryWithdrawn finds runs of a category that the plant's family of
// standards has withdrawn, keeps for voice only, or never had, and fibre of a
// class that it keeps for existing cabling only.
var CategoryWithdrawn = &lint.Rule{
	Name: "category-withdrawn", Title: "Checks that no run is of a category or class of fibre that is withdrawn, or for voice or existing cabling only, or not of the plant's standard",
	Severity: lint.Nonconformity, Reach: lint.Along, Check: categoryWithdrawn,
}

// oldCable is a cable type of such a category with the runs that are made of it.
type oldCable struct {
	cable *plant.Cable
	// word is the category or class, field the one that states it.
	word  string
	field *schema.Field
	// says is its status in words, status that of a category; none for fibre.
	says   string
	status standard.Status
	src    standard.Source
	first  *plant.Run
	runs   int
}

func categoryWithdrawn(p *lint.Pass) {
	var old []*oldCable
	of := make(map[*plant.Cable]*oldCable)
	k, g := newCopper(p), newLight(p)
	for _, c := range p.Plant.Cables {
		o := oldCopper(k, c)
		if o == nil {
			o = oldFibre(g, c)
		}
		if o != nil {
			old, of[c] = append(old, o), o
		}
	}
	if len(old) == 0 {
		return
	}
	for _, r := range p.Plant.Runs {
		o := of[r.Cable]
		if o == nil || !r.Live() || o.status == standard.VoiceOnly && servesVoice(r) {
			continue
		}
		if state, _ := r.State(); state == schema.StatePlanned && o.status != standard.OtherBody {
			p.Report(o.planned(r))
			continue
		}
		if o.status == 0 {
			continue // fibre that is there already may stay
		}
		if o.first == nil {
			o.first = r
		}
		o.runs++
	}
	for _, o := range old {
		if o.runs > 0 {
			p.Report(o.standing())
		}
	}
}

func servesVoice(r *plant.Run) bool {
	serves, stated := schema.RunServes.In(r.Record())
	return stated && serves == "voice"
}

// oldCopper is a cable type of a category that is not recognised, or nil.
func oldCopper(k *copper, c *plant.Cable) *oldCable {
	t, known := k.of.get(c)
	regime := k.pass.Plant.Regime
	status, src, ok := standard.StatusOf(regime, t.category)
	if !known || !ok || status == standard.Recognised {
		return nil
	}
	o := &oldCable{cable: c, word: t.category.String(), field: schema.CableCategory.Field, says: status.String(), status: status, src: src}
	if status == standard.OtherBody {
		o.says = "not specified by " + regime.String()
	}
	return o
}

// oldFibre is a cable type of a class of fibre that is for existing cabling
// only, or nil.
func oldFibre(g *light, c *plant.Cable) *oldCable {
	class, known := g.of.get(c)
	if old, src, ok := standard.Grandfathered(g.pass.Plant.Regime, class); known && ok && old {
		return &oldCable{cable: c, word: class.String(), field: schema.CableFibre.Field, says: "for existing cabling only", src: src}
	}
	return nil
}

// what is the category or class in words.
func (o *oldCable) what() string { return o.field.Name + " " + o.word }

// planned is the finding about new work.
func (o *oldCable) planned(r *plant.Run) lint.Finding {
	f := lint.AboutField(r.Entry, schema.RunCable.Field)
	f.Severity = degree(o.src)
	f.Message = fmt.Sprintf("%s: planned in %s, which is %s", schema.Printable(r.Label), o.what(), o.says)
	f.Working = o.terms(term("state", schema.StatePlanned))
	o.limit(&f)
	f.Next = "plan it in category 6A, or in category 5e or 6 where they carry what it serves"
	if o.field == schema.CableFibre.Field {
		f.Next = "plan it in OM4, or in OS2 where it is long"
	}
	f.Key = []string{o.cable.Label}
	f.Related = []schema.Note{note(o.cable.Entry, "the cable type")}
	return f
}

// standing is the one finding about all runs that are there already: they are
// a legacy and no breach.
func (o *oldCable) standing() lint.Finding {
	f := lint.AboutField(o.cable.Entry, o.field)
	f.Severity = lint.Observation
	f.Message = fmt.Sprintf("%s: %s is %s, and %s", schema.Printable(o.cable.Label), o.what(), o.says, counted(o.runs, "run is of it", "runs are of it"))
	f.Working = o.terms(term("runs in use or planned", fmt.Sprintf("%d, the first is %s", o.runs, schema.Printable(o.first.Label))))
	o.limit(&f)
	f.Next = "plan their replacement; where they are out of use, state so"
	if o.status == standard.OtherBody {
		f.Next = "their lengths and losses are not judged: state the standard that they were built to, or the category that it has for them"
	}
	f.Excess = float64(o.runs)
	f.Related = []schema.Note{note(o.first.Entry, "the first of them")}
	return f
}

func (o *oldCable) terms(last lint.Term) []lint.Term {
	return []lint.Term{term("cable type", schema.Printable(o.cable.Label)), term(o.field.Name, o.word), last}
}

func (o *oldCable) limit(f *lint.Finding) {
	f.Result, f.Limit, f.Source = o.what(), "a recognised category", o.src.String()
	if o.field == schema.CableFibre.Field {
		f.Limit = "a class that is for new cabling"
	}
}
