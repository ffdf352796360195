package plant

import (
	"cmp"
	"fmt"
	"path"
	"slices"

	"homerun/schema"
	"homerun/schema/standard"
	"homerun/schema/unit"
)

// Build makes a plant of the files that belong to it. Dir is the plant's
// folder. The files may come in any order; the plant is the same.
func Build(dir string, files []*schema.File) *Plant { return Excerpt(dir, files, nil) }

// Excerpt makes a plant as Build does, of bundles without the runs that are not to be
// kept: for whom a part of the plant is enough.
func Excerpt(dir string, files []*schema.File, keep func(run *schema.Record) bool) *Plant {
	p := lay(dir, files, keep)
	p.findLinks()
	p.findChannels()
	return p.Plant
}

// Lay makes a plant as Build does, but for links and channels: for whom it is enough
// what lies where.
func Lay(dir string, files []*schema.File) *Plant { return lay(dir, files, nil).Plant }

// A builder is a plant that is being built, with what only that needs.
type builder struct {
	*Plant
	shelves
	stocks
	// keep chooses among the runs of bundles, nil where all of them are kept.
	keep func(run *schema.Record) bool
	// tried counts how often a lost label was compared with all others.
	tried int
}

func lay(dir string, files []*schema.File, keep func(run *schema.Record) bool) *builder {
	byPath := func(a, b *schema.File) int { return cmp.Compare(a.Path, b.Path) }
	if !slices.IsSortedFunc(files, byPath) {
		files = slices.Clone(files)
		slices.SortFunc(files, byPath)
	}
	p := &builder{Plant: &Plant{Dir: dir, Units: unit.Metric}, keep: keep}
	p.size(files)
	for _, f := range files {
		p.Problems = append(p.Problems, f.Problems...)
		for i := range f.Entries {
			p.take(f.Entries[i])
		}
	}
	p.head()
	p.resolve()
	slices.SortStableFunc(p.Problems, func(a, b schema.Problem) int {
		return cmp.Or(cmp.Compare(a.At.Path, b.At.Path), cmp.Compare(a.At.Line, b.At.Line), cmp.Compare(a.At.Column, b.At.Column))
	})
	return p
}

// take files one top-level record under its kind and label.
func (p *builder) take(e schema.Entry) {
	it := item{e}
	switch e.Kind.Name {
	case schema.KindPlant:
		p.takePlant(e)
	case schema.KindSpace:
		p.Spaces = register(p, p.Spaces, put(&p.spaces, Space{item: it}))
	case schema.KindPathway:
		p.Pathways = register(p, p.Pathways, put(&p.pathways, Pathway{item: it}))
	case schema.KindInterference:
		p.Interferences = register(p, p.Interferences, put(&p.interferences, Interference{item: it}))
	case schema.KindCable:
		p.Cables = register(p, p.Cables, put(&p.cables, Cable{item: it, medium: mediumOf(e.Record), order: len(p.Cables)}))
	case schema.KindRack:
		p.Racks = register(p, p.Racks, put(&p.racks, Rack{item: it}))
	case schema.KindPanel, schema.KindOutlet, schema.KindConsolidation, schema.KindClosure, schema.KindEquipment:
		p.takeHolder(it)
	case schema.KindBusbar:
		p.Busbars = register(p, p.Busbars, put(&p.busbars, Busbar{item: it}))
	case schema.KindBundle:
		p.takeBundle(it)
	case schema.KindRun:
		p.Runs = register(p, p.Runs, put(&p.runs, Run{item: it}))
	case schema.KindCord:
		p.Cords = register(p, p.Cords, put(&p.cords, Cord{item: it}))
	case schema.KindTest:
		p.Tests = register(p, p.Tests, put(&p.tests, Test{item: it}))
	case schema.KindWaiver:
		p.Waivers = append(p.Waivers, e)
		p.enter(e.Label, it)
	case schema.KindPolicy:
		p.Policies = append(p.Policies, e)
		p.enter(e.Label, it)
	default:
		panic("plant: no place for a " + e.Kind.Name)
	}
}

func (p *builder) takeBundle(it item) {
	b := put(&p.bundles, Bundle{item: it})
	p.Bundles = register(p, p.Bundles, b)
	first := len(p.Runs)
	for _, in := range it.Inner {
		if p.keep != nil && !p.keep(in) {
			continue
		}
		p.Runs = register(p, p.Runs, put(&p.runs, Run{item: item{it.In(in)}, Bundle: b}))
	}
	b.Runs = slices.Clip(p.Runs[first:])
}

func (p *builder) takeHolder(it item) {
	h := put(&p.holders, Holder{item: it})
	if v := it.Own("ports"); v != nil && !v.Bad {
		n := int(min(v.Number, mostPorts))
		h.Ports = p.ports.list(n)[:n]
		for i := range h.Ports {
			h.Ports[i].Holder, h.Ports[i].Number = h, i+1
		}
	}
	p.Holders = register(p, p.Holders, h)
}

// takePlant keeps one plant record: the one in plant.hcl, which makes the
// folder a plant, before any other.
func (p *builder) takePlant(e schema.Entry) {
	switch {
	case p.Entry.Record == nil:
		p.Entry = e
		return
	case path.Base(e.Path) == schema.PlantFile && path.Base(p.Entry.Path) != schema.PlantFile:
		p.Entry, e = e, p.Entry
	}
	p.problem(schema.DuplicateLabel, e, e.Start(), fmt.Sprintf("%s: this folder already is the plant %s", schema.Printable(e.Label), schema.Printable(p.Entry.Label)),
		"keep one plant record in a plant's folder", schema.Note{Kind: schema.KindPlant, Label: p.Entry.Label, At: p.Entry.Start(), Message: "first stated here"})
}

func register[T Item](p *builder, all []T, it T) []T {
	p.enter(it.Record().Label, it)
	return append(all, it)
}

// enter indexes an item by its label. The first keeps the label; the second is
// a problem that shows both places, and is still part of the plant.
func (p *builder) enter(label string, it Item) {
	if label == "" {
		return
	}
	first := p.index.enter(label, it)
	if first == nil {
		return
	}
	e, f := it.Place(), first.Place()
	p.problem(schema.DuplicateLabel, e, e.Within(e.LabelAt), fmt.Sprintf("%s: the label is already that of %s", schema.Printable(label), schema.OneOf([]string{f.Kind.Name})),
		"give one of the two another label, as on the wall", schema.Note{Kind: f.Kind.Name, Label: label, At: f.Within(f.LabelAt), Message: "first used here"})
}

func (p *builder) problem(code schema.Code, e schema.Entry, at schema.Location, message, next string, also ...schema.Note) {
	p.Problems = append(p.Problems, schema.Problem{Code: code, Kind: e.Kind.Name, Label: e.Name(), At: at, Message: message, Next: next, Also: also})
}

// head reads the plant record itself.
func (p *builder) head() {
	if p.Entry.Record == nil {
		file := path.Join(p.Dir, schema.PlantFile)
		p.Problems = append(p.Problems, schema.Problem{
			Code: schema.MissingField, Kind: schema.KindPlant, At: schema.Location{Path: file, Line: 1, Column: 1, EndLine: 1, EndColumn: 1},
			Message: "no plant record could be read here", Next: `write one: plant "north-pier" { standard = "TIA-568" }`,
		})
		return
	}
	if s, ok := schema.PlantStandard.In(p.Entry.Record); ok {
		p.Regime, _ = standard.ParseRegime(s)
	}
	if s, ok := schema.PlantFireCode.In(p.Entry.Record); ok {
		p.Fire, _ = standard.ParseFireCode(s)
	}
	if s, ok := schema.PlantUnits.In(p.Entry.Record); ok && s == "us" {
		p.Units = unit.US
	}
}
