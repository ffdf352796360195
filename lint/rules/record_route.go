package rules

import (
	"fmt"

	"homerun/lint"
	"homerun/schema"
	"homerun/schema/plant"
)

// RecordRouteMissing finds runs between two spaces whose way nobody recorded.
// The route decides fire listing, temperature and noise: without it those rules
// can say nothing.
var RecordRouteMissing = &lint.Rule{
	Name: "record-route-missing", Title: "Checks that a run between two spaces says which pathways it lies in",
	Severity: lint.Observation, Reach: lint.Along, Check: routeMissing,
}

// routeless counts the runs without a route under one record, so that a panel
// without routes is one finding and not forty-eight.
type routeless struct {
	about schema.Entry
	first *plant.Run
	runs  int
}

func routeMissing(p *lint.Pass) {
	var groups []*routeless
	byRecord := make(map[*schema.Record]*routeless)
	for _, r := range p.Plant.Runs {
		if !lacksRoute(r) {
			continue
		}
		about := routeOwner(r)
		g := byRecord[about.Record]
		if g == nil {
			g = &routeless{about: about, first: r}
			byRecord[about.Record] = g
			groups = append(groups, g)
		}
		g.runs++
	}
	for _, g := range groups {
		p.Report(g.finding())
	}
}

// lacksRoute says whether a run leaves its room and does not say how. A cable
// between two racks of one room lies in no pathway.
func lacksRoute(r *plant.Run) bool {
	if r.Way != nil {
		// A list without a pathway says no more than no list.
		if len(r.Way.Pathways) > 0 || !r.Way.Known {
			return false
		}
	} else if r.Record().Lookup(schema.RunRoute.Field) != nil {
		return false
	}
	if r.Damaged || !r.Live() {
		return false
	}
	from, to := r.From.Space(), r.To.Space()
	return from != nil && to != nil && from != to
}

// routeOwner is the record to which a route is best added.
func routeOwner(r *plant.Run) schema.Entry {
	if r.Bundle != nil {
		return r.Bundle.Entry
	}
	return r.From.First().Holder.Entry
}

func (g *routeless) finding() lint.Finding {
	f := lint.About(g.about)
	run := schema.Printable(g.first.Label)
	f.Message = fmt.Sprintf("%s: no route is recorded for %s", schema.Printable(g.about.Name()), run)
	if g.runs > 1 {
		f.Message += fmt.Sprintf(" and %s more", counted(g.runs-1, "run", "runs"))
	}
	f.Working = []lint.Term{
		term("from", schema.Printable(g.first.From.Space().Label)),
		term("to", schema.Printable(g.first.To.Space().Label)),
		term("route", "not stated"),
	}
	f.Result, f.Limit, f.Source = "no route", "pathways from end to end", "ANSI/TIA-606-B, record of pathways; unconfirmed: check the printed standard"
	f.Next = `name the pathways in order: route = ["1-T-04", "1-J-11"]; without them fire listing, heat and noise are not checked`
	f.Excess = float64(g.runs)
	if g.first.Record() != g.about.Record {
		f.Related = []schema.Note{note(g.first.Entry, "the first of them")}
	}
	return f
}

// RecordRouteBroken finds routes that can not be walked.
var RecordRouteBroken = &lint.Rule{
	Name: "record-route-broken", Title: "Checks that neighbouring pathways of a route share a space, and that it reaches both ends of the run",
	Severity: lint.Nonconformity, Reach: lint.Along, Check: routeBroken,
}

func routeBroken(p *lint.Pass) {
	for _, b := range p.Plant.Bundles {
		if b.Way != nil && b.Way.Known {
			routeGaps(p, b.Entry, schema.BundleRoute.Field, b.Way)
		}
	}
	var open []*unreached
	for _, r := range p.Plant.Runs {
		if r.Way == nil || !r.Way.Known || len(r.Way.Pathways) == 0 {
			continue
		}
		if r.Bundle == nil || r.Way != r.Bundle.Way {
			routeGaps(p, r.Entry, schema.RunRoute.Field, r.Way)
		}
		open = reachEnds(open, r)
	}
	for _, u := range open {
		p.Report(u.finding())
	}
}

// routeGaps reports neighbouring pathways between which no space is shared.
func routeGaps(p *lint.Pass, e schema.Entry, field *schema.Field, w *plant.Way) {
	for i := 1; i < len(w.Pathways); i++ {
		before, after := w.Pathways[i-1], w.Pathways[i]
		if meet(before, after) {
			continue
		}
		f := lint.AboutField(e, field)
		f.Message = fmt.Sprintf("%s: pathways %s and %s share no space", schema.Printable(e.Name()), schema.Printable(before.Label), schema.Printable(after.Label))
		f.Working = []lint.Term{
			term(schema.Printable(before.Label)+" passes", spaceNames(before.Through)),
			term(schema.Printable(after.Label)+" passes", spaceNames(after.Through)),
		}
		f.Result, f.Limit, f.Source = "no shared space", "1 shared space", "geometry"
		f.Next = "add the pathway between them, put the route in order, or correct the spaces that a pathway passes"
		f.Key = []string{before.Label, after.Label}
		f.Related = []schema.Note{note(before.Entry, "one pathway"), note(after.Entry, "the next")}
		p.Report(f)
	}
}

// unreached is one end that routes of one record stop short of.
type unreached struct {
	about schema.Entry
	field *schema.Field
	end   *plant.Space
	at    *plant.Pathway
	holds *plant.Holder
	first *plant.Run
	runs  int
}

// reachEnds adds the ends that the run's route does not reach. A route may be
// written from either end; where neither order fits, the written one counts.
func reachEnds(open []*unreached, r *plant.Run) []*unreached {
	ways := r.Way.Pathways
	first, last := ways[0], ways[len(ways)-1]
	from, to := r.From.Space(), r.To.Space()
	start, end := from == nil || reaches(first, from), to == nil || reaches(last, to)
	if start && end || (from == nil || reaches(last, from)) && (to == nil || reaches(first, to)) {
		return open
	}
	if !start {
		open = addUnreached(open, r, r.From.First().Holder, first)
	}
	if !end {
		open = addUnreached(open, r, r.To.First().Holder, last)
	}
	return open
}

// addUnreached counts runs of one bundle that end in the same space together.
func addUnreached(open []*unreached, r *plant.Run, holds *plant.Holder, at *plant.Pathway) []*unreached {
	about := r.Entry
	field := schema.RunRoute.Field
	if r.Bundle != nil && r.Way == r.Bundle.Way {
		about, field = r.Bundle.Entry, schema.BundleRoute.Field
	}
	for i := len(open) - 1; i >= 0 && open[i].about.Record == about.Record; i-- {
		if open[i].end == holds.Space && open[i].at == at {
			open[i].runs++
			return open
		}
	}
	return append(open, &unreached{about: about, field: field, end: holds.Space, at: at, holds: holds, first: r, runs: 1})
}

func (u *unreached) finding() lint.Finding {
	f := lint.AboutField(u.about, u.field)
	whose := ""
	if u.first.Record() != u.about.Record {
		whose = fmt.Sprintf(" of %s", schema.Printable(u.first.Label))
		if u.runs > 1 {
			whose = fmt.Sprintf(" of %s and %s more", schema.Printable(u.first.Label), counted(u.runs-1, "run", "runs"))
		}
	}
	space, holder := schema.Printable(u.end.Label), schema.Printable(u.holds.Label)
	f.Message = fmt.Sprintf("%s: the route%s does not reach %s, the space of %s", schema.Printable(u.about.Name()), whose, space, holder)
	f.Working = []lint.Term{
		term(holder+" is in", space),
		term(schema.Printable(u.at.Label)+" passes", spaceNames(u.at.Through)),
	}
	f.Result, f.Limit, f.Source = "ends in "+spaceNames(u.at.Through), space, "geometry"
	f.Next = "add the pathway that leads there, or correct the space"
	f.Key = []string{u.end.Label}
	f.Excess = float64(u.runs)
	f.Related = []schema.Note{note(u.holds.Entry, "stands in "+space), note(u.at.Entry, "the pathway at that end")}
	return f
}
