package rules

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"homerun/lint"
	"homerun/schema"
	"homerun/schema/plant"
)

// RecordLabelCollision finds labels and files that people or file systems take
// for one another.
var RecordLabelCollision = &lint.Rule{
	Name: "record-label-collision", Title: "Checks that no two labels or files differ only in case, or in O and 0, I, l and 1",
	Severity: lint.Observation, Reach: lint.Along, Alike: foldings, Check: labelCollision,
}

func labelCollision(p *lint.Pass) {
	var labels collisions
	for it := range p.Plant.Items() {
		labels.add(it.Record().Label, it.Record().Kind)
	}
	for _, c := range labels.found(func(label string) bool { _, ok := p.Plant.Find(label); return ok }) {
		item, _ := p.Plant.Find(c.second)
		other, _ := p.Plant.Find(c.first)
		e := item.Place()
		f := lint.About(e)
		f.At = e.Within(e.LabelAt)
		f.Related = []schema.Note{note(other.Place(), "the other one")}
		p.Report(c.fill(f, "label"))
	}
	var files collisions
	paths := recordPaths(p.Plant)
	for _, path := range paths.list {
		files.add(path, nil)
	}
	for _, c := range files.found(paths.has) {
		f := lint.Finding{Record: c.second, At: schema.Location{Path: c.second, Line: 1, Column: 1, EndLine: 1, EndColumn: 1}}
		f.Related = []schema.Note{{At: schema.Location{Path: c.first, Line: 1, Column: 1, EndLine: 1, EndColumn: 1}, Message: "the other one"}}
		p.Report(c.fill(f, "file"))
	}
}

// A collision is two names that are easily taken for each other.
type collision struct{ first, second, how string }

func (c collision) fill(f lint.Finding, what string) lint.Finding {
	first, second := schema.Printable(c.first), schema.Printable(c.second)
	f.Message = fmt.Sprintf("%s: the %s differs from %s only in %s", second, what, first, c.how)
	f.Working = []lint.Term{term("one "+what, first), term("another", second)}
	f.Result, f.Limit, f.Source = "differs only in "+c.how, "names that can be told apart", "common practice"
	f.Next = "rename one of them, as on the wall, and keep the old name in former"
	if what == "file" {
		f.Next = "rename one of the files: some file systems keep only one of them"
	}
	f.Key = []string{c.first}
	return f
}

// collisions collects names. Only names that hold a character which can be
// mistaken are folded: in most plants that is hardly any.
type collisions struct {
	lower, glyphs []kindred
}

// A kindred is a name and the kind of what bears it, nil for a file.
type kindred struct {
	name string
	kind *schema.Kind
}

func (c *collisions) add(name string, kind *schema.Kind) {
	lower, glyph := false, false
	for i := range len(name) {
		lower = lower || name[i] >= 'a' && name[i] <= 'z' || name[i] >= 0x80
		glyph = glyph || name[i] == 'O' || name[i] == 'I' || name[i] == 'l'
	}
	if lower {
		c.lower = append(c.lower, kindred{name, kind})
	}
	if glyph {
		c.glyphs = append(c.glyphs, kindred{name, kind})
	}
}

// found returns the collisions in the order of kinds, and of records in each kind.
func (c *collisions) found(exists func(string) bool) []collision {
	pairs := fold(byKind(c.lower), strings.ToUpper, "case", exists)
	return append(pairs, fold(byKind(c.glyphs), asDigits, "O and 0, or I, l and 1", exists)...)
}

func byKind(names []kindred) []string {
	if len(names) == 0 {
		return nil
	}
	kinds := schema.Kinds()
	place := func(k kindred) int { return slices.Index(kinds, k.kind) }
	slices.SortStableFunc(names, func(a, b kindred) int { return cmp.Compare(place(a), place(b)) })
	all := make([]string, len(names))
	for i := range names {
		all[i] = names[i].name
	}
	return all
}

// foldings are what a name is folded into: names that are taken for each other
// have one of them in common.
func foldings(name string) []string {
	return []string{"case " + strings.ToUpper(name), "glyph " + asDigits(name)}
}

func fold(names []string, folded func(string) string, how string, exists func(string) bool) []collision {
	if len(names) == 0 {
		return nil
	}
	var found []collision
	first := make(map[string]string, len(names))
	for _, name := range names {
		key := folded(name)
		before, seen := first[key]
		switch {
		case seen && before != name:
			found = append(found, collision{before, name, how})
		case !seen && key != name && exists(key):
			found = append(found, collision{key, name, how})
			first[key] = key
		case !seen:
			first[key] = name
		}
	}
	return found
}

var lookalikes = strings.NewReplacer("O", "0", "I", "1", "l", "1")

func asDigits(name string) string { return lookalikes.Replace(name) }

// A pathList is paths in order, each once.
type pathList struct {
	list []string
	// seen is made for long lists: short ones are looked through.
	seen map[string]bool
}

const fewPaths = 16

func (l *pathList) has(path string) bool {
	if l.seen == nil {
		return slices.Contains(l.list, path)
	}
	return l.seen[path]
}

func (l *pathList) add(path string) {
	if l.has(path) {
		return
	}
	l.list = append(l.list, path)
	switch {
	case l.seen != nil:
		l.seen[path] = true
	case len(l.list) > fewPaths:
		l.seen = make(map[string]bool)
		for _, p := range l.list {
			l.seen[p] = true
		}
	}
}

// recordPaths are the files of the plant that hold records, in the order of kinds and
// records.
func recordPaths(p *plant.Plant) *pathList {
	var paths pathList
	last := ""
	add := func(e schema.Entry) {
		if e.Record == nil || e.Path == last {
			return
		}
		last = e.Path
		paths.add(e.Path)
	}
	add(p.Entry)
	each(p.Spaces, add)
	each(p.Pathways, add)
	each(p.Interferences, add)
	each(p.Cables, add)
	each(p.Racks, add)
	each(p.Holders, add)
	each(p.Busbars, add)
	each(p.Bundles, add)
	each(p.Runs, add)
	each(p.Cords, add)
	each(p.Tests, add)
	for _, list := range [][]schema.Entry{p.Policies, p.Waivers} {
		for _, e := range list {
			add(e)
		}
	}
	return &paths
}

func each[T plant.Item](items []T, add func(schema.Entry)) {
	for _, item := range items {
		add(item.Place())
	}
}
