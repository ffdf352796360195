package rules

import (
	"math"

	"homerun/lint"
	"homerun/schema"
	"homerun/schema/plant"
	"homerun/schema/standard"
	"homerun/schema/unit"
)

// PathwayFill holds what the cables in a pathway take up of its section
// against the most that they may.
var PathwayFill = &lint.Rule{
	Name: "pathway-fill", Title: "Checks that the cables in a pathway leave the room free that has to stay free",
	Severity: lint.Nonconformity, Reach: lint.Within, Limit: lint.GreatestShare, Check: pathwayFill,
}

func pathwayFill(p *lint.Pass) {
	told := make(map[*plant.Cable]bool)
	for _, w := range p.Plant.Pathways {
		if len(w.Loads) == 0 {
			continue
		}
		loads := loadsOf(w)
		section, sized := sectionOf(w, p.Units())
		if !sized {
			unsized(p, w, loads)
			continue
		}
		judgeFill(p, w, loads, section)
		for i := range loads {
			unmeasured(p, w, &loads[i], told)
		}
	}
}

// A hollow is the room inside a pathway, and the words for how it was
// found.
type hollow struct {
	standard.Section
	from string
	// bore is the inside diameter, zero where the section is not round.
	bore unit.Length
}

// sectionOf is the section of a pathway that states its size.
func sectionOf(w *plant.Pathway, in unit.System) (hollow, bool) {
	bore, round := schema.PathwayDiameter.In(w.Record())
	if round {
		s, ok := standard.RoundSection(bore)
		return hollow{Section: s, from: "diameter " + bore.Text(in), bore: bore}, ok
	}
	width, wide := schema.PathwayWidth.In(w.Record())
	depth, deep := schema.PathwayDepth.In(w.Record())
	if !wide || !deep {
		return hollow{}, false
	}
	s, ok := standard.BoxSection(width, depth)
	return hollow{Section: s, from: width.Text(in) + " x " + depth.Text(in)}, ok
}

// unsized asks for the size of a pathway where everything else that the sum
// needs is recorded. A plant that records no diameters is left in peace.
func unsized(p *lint.Pass, w *plant.Pathway, loads []load) {
	for i := range loads {
		if !loads[i].known {
			return
		}
	}
	var field *schema.Field
	switch pathwayKind(w) {
	case "conduit", "sleeve":
		field = schema.PathwayDiameter.Field
	case "tray", "ladder", "basket", "raceway":
		field = schema.PathwayWidth.Field
		if w.Own(field.Name) != nil {
			field = schema.PathwayDepth.Field
		}
	default:
		return
	}
	if lost(w.Entry, field) || w.Own(field.Name) != nil {
		return
	}
	unstatedField(p, w.Entry, field, "how full its "+counted(w.Lying(), "cable makes", "cables make")+" it can not be checked", noField)
}

// noField is the source of a finding that only asks for a field.
const noField = "common practice: what is not recorded can not be checked"

// unmeasured asks for the diameter of a cable type, once.
func unmeasured(p *lint.Pass, w *plant.Pathway, l *load, told map[*plant.Cable]bool) {
	if l.known || l.cable == nil || told[l.cable] || lost(l.cable.Entry, schema.CableDiameter.Field) {
		return
	}
	told[l.cable] = true
	unstatedField(p, l.cable.Entry, schema.CableDiameter.Field, "how full run "+schema.Printable(l.first.Label)+" and its like make "+schema.Printable(w.Label)+" can not be checked", noField)
}

// A fillLimit is the most that may be filled of one pathway.
type fillLimit struct {
	percent  lint.Share
	law      law
	rounding standard.Rounding
	// lenient says that a fill within the rounding is only worth a look.
	lenient bool
}

// judgeFill holds one pathway against every limit on it and reports the
// strictest that is passed.
func judgeFill(p *lint.Pass, w *plant.Pathway, loads []load, s hollow) {
	count := 0
	for i := range loads {
		if loads[i].known {
			count += loads[i].count
		}
	}
	limit := limitOfFill(p, w, loads, count)
	if count == 0 || plainlyWithin(loads, s, limit.percent) {
		return
	}
	fill, ok := standard.FillOf(s.Section, diameters(loads, recorded))
	if !ok {
		return
	}
	verdict := fill.Judge(int(limit.percent), limit.rounding)
	switch {
	case verdict == standard.WithinLimit, verdict == standard.WithinRounding && !limit.lenient:
		return
	case verdict == standard.WithinRounding:
		limit.law.severity = lint.Observation
	}
	p.Report(overfull(p, &fullness{way: w, loads: loads, hollow: s, fill: fill, limit: limit, count: count, rounded: verdict == standard.WithinRounding}))
}

// plainlyWithin says whether a fill is so far within its limit that no exact
// sum is needed: most are.
func plainlyWithin(loads []load, s hollow, percent lint.Share) bool {
	sum := 0.0
	for i := range loads {
		d := loads[i].diameter.Millimetres()
		sum += float64(loads[i].count) * d * d
	}
	return sum*math.Pi/4 < 0.999*float64(percent)/100*s.Area().SquareMillimetres()
}

// limitOfFill is the limit on a pathway: that of the code where it binds a
// cable in it, otherwise that of the plant's own standards, otherwise that
// nothing holds more than its section. The owner's is taken where stricter.
func limitOfFill(p *lint.Pass, w *plant.Pathway, loads []load, count int) fillLimit {
	percent, src, limit := 100, "geometry: no cable takes up more than there is", fillLimit{}
	switch pathwayKind(w) {
	case "conduit", "sleeve", "duct":
		most, found, ok := conduitLimit(p, w, loads, count)
		if ok {
			percent, src, limit = most, found.String(), fillLimit{rounding: standard.NoteSeven, lenient: found.Body != "NFPA", law: lawOf(found, "")}
		}
	case "tray", "ladder", "basket":
		if most, ok := standard.TrayFill(p.Plant.Regime); ok {
			percent, src, limit = most.Most, most.Source.String(), fillLimit{law: lawOf(most.Source, "")}
		}
	}
	limit.law.source = src
	share, own := p.MostShare(lint.Share(percent))
	limit.percent = share
	if own != "" {
		return fillLimit{percent: share, law: law{source: own}}
	}
	return limit
}

// conduitLimit is the limit on a conduit. The code binds cable of class 2 and
// 3; its table counts for a short piece between boxes whatever lies in it.
func conduitLimit(p *lint.Pass, w *plant.Pathway, loads []load, count int) (percent int, src standard.Source, ok bool) {
	if p.Plant.Entry.Record != nil && lost(p.Plant.Entry, schema.PlantFireCode.Field) || lost(w.Entry, schema.PathwayLength.Field) {
		return 0, standard.Source{}, false // whether it is a short piece is not known
	}
	length, _ := schema.PathwayLength.In(w.Record())
	byCode, table, isCode := standard.ConduitFill(p.Plant.Fire, count, length)
	if isCode {
		short, _, _ := standard.ConduitFill(p.Plant.Fire, count, 0)
		for i := range loads {
			family, known := familyOf(loads[i].cable)
			applies, _, _ := standard.FillApplies(p.Plant.Fire, family)
			if known && applies || byCode != short {
				return byCode, table, true
			}
		}
	}
	return standard.DesignFill(p.Plant.Regime, count)
}
