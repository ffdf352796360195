package rules

import (
	"fmt"

	"homerun/lint"
	"homerun/schema"
	"homerun/schema/plant"
	"homerun/schema/standard"
)

// CategoryCoaxSeries finds thin coaxial cable where it is no patch, jacks that
// are made for another series, and applications that do not run over it.
var CategoryCoaxSeries = &lint.Rule{
	Name: "category-coax-series", Title: "Checks that coaxial runs are of a series for runs, end in jacks made for it, and serve what runs over 75 ohm",
	Severity: lint.Observation, Reach: lint.Along, Check: categoryCoaxSeries,
}

// thinRuns are the runs of a cable type that is for patches.
type thinRuns struct {
	cable  *plant.Cable
	series standard.Series
	src    standard.Source
	first  *plant.Run
	runs   int
}

func categoryCoaxSeries(p *lint.Pass) {
	series := coaxOf(p)
	if !series.some {
		return
	}
	var thin []*thinRuns
	of := make(map[*plant.Cable]*thinRuns)
	for _, c := range p.Plant.Cables {
		only, src, ok := standard.ForPatchesOnly(series.at(c))
		if ok && only {
			t := &thinRuns{cable: c, series: series.at(c), src: src}
			thin, of[c] = append(thin, t), t
		}
	}
	for _, r := range p.Plant.Runs {
		if series.at(r.Cable) == 0 || !r.Live() {
			continue
		}
		if t := of[r.Cable]; t != nil {
			if t.first == nil {
				t.first = r
			}
			t.runs++
		}
		ethernetOverCoax(p, r, series.at(r.Cable))
	}
	for _, t := range thin {
		if t.runs > 0 {
			p.Report(t.finding())
		}
	}
	for _, h := range p.Plant.Holders {
		otherSeries(p, h, &series)
	}
}

func (t *thinRuns) finding() lint.Finding {
	f := lint.AboutField(t.cable.Entry, schema.CableSeries.Field)
	f.Message = fmt.Sprintf("%s: series %s is for short patches, and %s of it", schema.Printable(t.cable.Label), t.series, counted(t.runs, "run is", "runs are"))
	f.Working = []lint.Term{
		term("cable type", schema.Printable(t.cable.Label)+", series "+t.series.String()),
		term("runs", fmt.Sprintf("%d, the first is %s", t.runs, schema.Printable(t.first.Label))),
	}
	f.Result, f.Limit, f.Source = "series "+t.series.String(), "series 6 or 11", t.src.String()
	f.Next = "pull series 6, or series 11 on a long way"
	f.Excess = float64(t.runs)
	f.Related = []schema.Note{note(t.first.Entry, "the first of them")}
	return f
}

// ethernetOverCoax finds applications over twisted pair or fibre that stand at a
// coaxial run. That one is wrong whatever the cable.
func ethernetOverCoax(p *lint.Pass, r *plant.Run, series standard.Series) {
	serves, stated := schema.RunServes.In(r.Record())
	if !stated {
		return
	}
	_, copper := standard.ParseApplication(serves)
	_, optical := standard.ParseOpticalApplication(serves)
	if copper != nil && optical != nil {
		return
	}
	f := lint.AboutField(r.Entry, schema.RunServes.Field)
	f.Severity = lint.Nonconformity
	f.Message = fmt.Sprintf("%s: %s does not run over coaxial cable, the cable is series %s", schema.Printable(r.Label), serves, series)
	f.Working = []lint.Term{term("serves", serves), term("cable", schema.Printable(r.Cable.Label)+", series "+series.String()+", 75 ohm")}
	f.Result, f.Limit, f.Source = serves, "an application over 75 ohm", "IEEE 802.3, the application's own medium"
	f.Next = "correct serves, or the type of cable"
	f.Key = []string{"medium"}
	p.Report(f)
}

// otherSeries finds a panel or outlet whose connectors are made for another
// series than the runs behind it: they crimp onto another diameter.
func otherSeries(p *lint.Pass, h *plant.Holder, series *byCable[standard.Series]) {
	v := h.Own(schema.PanelSeries.Name)
	if v == nil || v.Bad {
		return
	}
	made, err := standard.ParseSeries(v.Text)
	if err != nil {
		return
	}
	var first *plant.Run
	runs := 0
	for i := range h.Ports {
		r := h.Ports[i].Rear
		if r == nil || !r.Live() || series.at(r.Cable) == 0 || series.at(r.Cable) == made {
			continue
		}
		if first == nil {
			first = r
		}
		runs++
	}
	if first == nil {
		return
	}
	own := series.at(first.Cable)
	field, _ := h.Kind.Field(schema.PanelSeries.Name)
	f := lint.AboutField(h.Entry, field)
	f.Message = fmt.Sprintf("%s: made for series %s, and %s of another, the first is %s in series %s", schema.Printable(h.Label), made,
		counted(runs, "run behind it is", "runs behind it are"), schema.Printable(first.Label), own)
	f.Working = []lint.Term{term(h.Kind.Name+" "+schema.Printable(h.Label), "series "+made.String()), term("run "+schema.Printable(first.Label), "series "+own.String())}
	f.Result, f.Limit, f.Source = "series "+own.String(), "series "+made.String(), connectorSource.String()
	f.Next = "exchange the connectors for those of the cable, or correct series"
	f.Excess = float64(runs)
	f.Related = []schema.Note{note(first.Entry, "the first run")}
	p.Report(f)
}

// connectorSource is where it stands that a connector fits one series.
var connectorSource = standard.Source{Body: "common practice", Clause: "a connector is made for the diameter of one series", Confidence: standard.FromMemory}
