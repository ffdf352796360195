package diffreport

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"homerun/schema"
)

// A Follower is asked, one after the other, about the states that the site goes
// through. The first call gives the files of the site as the work begins, each
// further one the files that changed; a file without entries is gone. It returns
// what the linter has against the state that neither plant has, and how many
// records it looked at.
type Follower func(changed []*schema.File) (objections []Objection, looked int)

// followed is what the states between the steps have shown.
type followed struct {
	// states is how many times the site changes, judged how many of these states
	// the linter was asked about.
	states, judged int
	// breaks are the nonconformities in passing.
	breaks []passing
}

// A passing is a nonconformity that neither plant has and a step leads to.
type passing struct {
	step int
	Objection
}

// mostLooked bounds the records that are looked at for one order, as a multiple
// of the records of the plant: beyond it not every state is judged.
const mostLooked = 3

// follow lets the linter judge the site as the steps change it. What is pulled
// or taken out in one go is one change. Where the states are too many for the
// size of the plant, several changes are judged together, evenly spread.
func (p *planner) follow(steps []Step, ask Follower) followed {
	var f followed
	ends := changesOf(steps)
	f.states = len(ends)
	if f.states == 0 {
		return f
	}
	x := p.newScene()
	files := x.begin()
	records := 0
	for _, file := range files {
		records += len(file.Entries)
	}
	ask(files)
	budget := mostLooked * max(records, fewRecords)
	dirty := make(map[string]bool)
	next, waited := 0, 0
	for n, end := range ends {
		for ; next <= end; next++ {
			for _, path := range x.do(&steps[next]) {
				dirty[path] = true
			}
		}
		waited++
		if left := f.states - n - 1; left > 0 && waited < stride(f.judged, mostLooked*max(records, fewRecords)-budget, budget, left) {
			continue
		}
		changed := x.changed(dirty)
		if n == f.states-1 {
			changed = append(changed, &schema.File{Path: formerPath})
		}
		objections, looked := ask(changed)
		budget -= looked
		f.judged++
		waited = 0
		for _, o := range objections {
			f.breaks = append(f.breaks, passing{steps[end].Number, o})
		}
	}
	return f
}

// followed follows the steps where somebody asks.
func (p *planner) followed(steps []Step, made func() Follower) followed {
	if made == nil {
		return followed{}
	}
	return p.follow(steps, made())
}

// fewRecords is how large a plant is taken to be at least.
const fewRecords = 2000

// stride is how many changes are judged together, so that what the judged ones
// have cost on average is enough for those that are left.
func stride(judged, spent, budget, left int) int {
	if judged == 0 || spent == 0 {
		return 1
	}
	if budget <= 0 {
		return left
	}
	each := max(1, spent/judged)
	return max(1, (left*each+budget-1)/budget)
}

// changesOf are the places of the steps after which the site is judged: those
// that change it, of a row of pulls or of removals in one visit the last.
func changesOf(steps []Step) []int {
	var ends []int
	for i := range steps {
		if !steps[i].stirs() {
			continue
		}
		if n := len(ends); n > 0 && ends[n-1] == i-1 && inOneGo(&steps[i-1], &steps[i]) {
			ends[n-1] = i
			continue
		}
		ends = append(ends, i)
	}
	return ends
}

// inOneGo says whether two steps are one piece of work in the pathways.
func inOneGo(a, b *Step) bool {
	return a.Visit == b.Visit && a.Action == b.Action && (a.Action == Pull || a.Action == Remove && onlyCables(a) && onlyCables(b))
}

func onlyCables(s *Step) bool {
	return !slices.ContainsFunc(s.deeds, func(d deed) bool { return d.what != cableOut })
}

// changed are the files at some paths as they are now.
func (x *scene) changed(dirty map[string]bool) []*schema.File {
	var files []*schema.File
	for path := range dirty {
		files = append(files, &schema.File{Path: path, Entries: x.entries(x.slots[path])})
		delete(dirty, path)
	}
	slices.SortFunc(files, func(a, b *schema.File) int { return cmp.Compare(a.Path, b.Path) })
	return files
}

// formerPath is the file of what only the earlier plant records and cables that
// are still there may refer to.
const formerPath = "former"

// begin are the files of the site as the work begins: those of what changes, and
// of the rest of the later plant what lies or stands with it.
func (x *scene) begin() []*schema.File {
	with := x.neighbours()
	files := make(map[string]*schema.File)
	put := func(path string, e schema.Entry) {
		e.Path = path
		if files[path] == nil {
			files[path] = &schema.File{Path: path}
		}
		files[path].Entries = append(files[path].Entries, e)
	}
	for path, s := range x.slots {
		files[path] = &schema.File{Path: path, Entries: x.entries(s)}
	}
	for _, s := range subjects(x.head) {
		if s.Parent == nil && with(s) && !x.placed(s) {
			put("plant "+s.Path, s.Entry)
		}
	}
	for i := range x.changes {
		if c := &x.changes[i]; c.After.Record == nil && !c.onSite() && referredTo(c.Kind) {
			put(formerPath, schema.Entry{Record: x.carried(c.Before.Record, x.goneLabel(c.was()), nil), Path: formerPath, Line: i + 1})
		}
	}
	all := make([]*schema.File, 0, len(files))
	for _, f := range files {
		all = append(all, f)
	}
	slices.SortFunc(all, func(a, b *schema.File) int { return cmp.Compare(a.Path, b.Path) })
	return all
}

// referredTo says whether cables and hardware may refer to a kind of record that
// nobody works on.
func referredTo(kind string) bool {
	return kind == schema.KindSpace || kind == schema.KindCable || kind == schema.KindInterference
}

// placed says whether a record of the later plant stands in a file of its own.
func (x *scene) placed(s subject) bool {
	if s.Kind.Name == schema.KindBundle {
		return x.slots["bundle "+s.Label] != nil
	}
	if c := x.after[s.Label]; c != nil && c.After.Record == s.Record && x.at[c] != nil {
		return true
	}
	w := x.byID[s.Label]
	return w != nil && (w.run.after != nil && w.run.after.Record() == s.Record || w.cord.after != nil && w.cord.after.Record() == s.Record)
}

// clashes tell what is broken in passing, the records concerned first.
func (f *followed) clashes() []string {
	var all []string
	for _, b := range f.breaks {
		all = append(all, fmt.Sprintf("step %d: %s (%s): neither before nor after the change, and in no order that was tried", b.step, strings.ReplaceAll(b.Text, oldMark, ""), b.Rule))
	}
	return tidy(all)
}
