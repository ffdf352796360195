package rules

import (
	"fmt"

	"homerun/lint"
	"homerun/schema"
	"homerun/schema/plant"
	"homerun/schema/standard"
)

// CategoryWithdrawn finds runs of a category that the plant's family of
// standards has withdrawn, keeps for voice only, or never had.
var CategoryWithdrawn = &lint.Rule{
	Name: "category-withdrawn", Title: "Checks that no run is of a category that is withdrawn, or for voice only, or not of the plant's standard",
	Severity: lint.Nonconformity, Check: categoryWithdrawn,
}

// oldCable is a cable type of such a category with the runs that are made of it.
type oldCable struct {
	cable    *plant.Cable
	category standard.Category
	regime   standard.Regime
	status   standard.Status
	src      standard.Source
	first    *plant.Run
	runs     int
}

func categoryWithdrawn(p *lint.Pass) {
	var old []*oldCable
	of := make(map[*plant.Cable]*oldCable)
	k := newCopper(p)
	for _, c := range p.Plant.Cables {
		t, known := k.of[c]
		status, src, ok := standard.StatusOf(p.Plant.Regime, t.category)
		if known && ok && status != standard.Recognised {
			o := &oldCable{cable: c, category: t.category, regime: p.Plant.Regime, status: status, src: src}
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

// says is the status in words.
func (o *oldCable) says() string {
	if o.status == standard.OtherBody {
		return "not specified by " + o.regime.String()
	}
	return o.status.String()
}

// planned is the finding about new work.
func (o *oldCable) planned(r *plant.Run) lint.Finding {
	f := lint.AboutField(r.Entry, schema.RunCable.Field)
	f.Severity = degree(o.src)
	f.Message = fmt.Sprintf("%s: planned in category %s, which is %s", schema.Printable(r.Label), o.category, o.says())
	f.Working = o.terms(term("state", schema.StatePlanned))
	o.limit(&f)
	f.Next = "plan it in category 6A, or in category 5e or 6 where they carry what it serves"
	f.Key = []string{o.cable.Label}
	f.Related = []schema.Note{note(o.cable.Entry, "the cable type")}
	return f
}

// standing is the one finding about all runs that are there already: they are
// a legacy and no breach.
func (o *oldCable) standing() lint.Finding {
	f := lint.AboutField(o.cable.Entry, schema.CableCategory.Field)
	f.Severity = lint.Observation
	f.Message = fmt.Sprintf("%s: category %s is %s, and %s", schema.Printable(o.cable.Label), o.category, o.says(), counted(o.runs, "run is of it", "runs are of it"))
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
	return []lint.Term{term("cable type", schema.Printable(o.cable.Label)), term("category", o.category.String()), last}
}

func (o *oldCable) limit(f *lint.Finding) {
	f.Result, f.Limit, f.Source = "category "+o.category.String(), "a recognised category", o.src.String()
}
