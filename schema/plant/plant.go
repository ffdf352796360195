package plant

import (
	"iter"
	"strings"

	"homerun/schema"
	"homerun/schema/standard"
	"homerun/schema/unit"
)

// A Plant is the cabling of one building or campus, as its records state it.
// Every list is in the order of file, then line.
type Plant struct {
	// Dir is the plant's folder, slash-separated, relative to the top of the
	// repository; "." for the top itself.
	Dir string
	// Entry is the plant record; its Record is nil when there is none.
	schema.Entry
	// Regime says whose limits hold; zero when the records do not say.
	Regime standard.Regime
	// Fire says whose fire rules hold; zero when the records do not say.
	Fire standard.FireCode
	// Units is the system in which quantities are printed.
	Units unit.System

	Spaces        []*Space
	Pathways      []*Pathway
	Interferences []*Interference
	Cables        []*Cable
	Racks         []*Rack
	Holders       []*Holder
	Busbars       []*Busbar
	Bundles       []*Bundle
	Runs          []*Run
	Cords         []*Cord
	Tests         []*Test
	Waivers       []schema.Entry
	Policies      []schema.Entry

	// Links are the permanent links, Channels what they are part of.
	Links    []*Link
	Channels []*Channel

	// Clashes are port sides that two cables claim.
	Clashes []Clash
	// Problems are the mistakes of all files and those of the plant as a
	// whole, in the order of file, then place.
	Problems []schema.Problem

	index *index
}

// An Item is any record of a plant: a pointer to one of this package's types.
type Item interface {
	Record() *schema.Record
	Place() schema.Entry
}

// Entries are the records of the plant that stand by themselves, kind by kind, each
// in its place.
func (p *Plant) Entries() []schema.Entry {
	var all []schema.Entry
	if p.Entry.Record != nil {
		all = append(all, p.Entry)
	}
	all = append(append(all, placed(p.Spaces)...), placed(p.Pathways)...)
	all = append(append(all, placed(p.Interferences)...), placed(p.Cables)...)
	all = append(append(all, placed(p.Racks)...), placed(p.Holders)...)
	all = append(append(all, placed(p.Busbars)...), placed(p.Bundles)...)
	for _, r := range p.Runs {
		if r.Bundle == nil {
			all = append(all, r.Place())
		}
	}
	all = append(append(all, placed(p.Cords)...), placed(p.Tests)...)
	return append(append(all, p.Waivers...), p.Policies...)
}

func placed[T Item](items []T) []schema.Entry {
	all := make([]schema.Entry, len(items))
	for i, it := range items {
		all[i] = it.Place()
	}
	return all
}

// Find returns the item with a label.
func (p *Plant) Find(label string) (Item, bool) {
	item := p.index.find(label)
	return item, item != nil
}

// FindPort returns the port that a text such as "1A-A:07" names.
func (p *Plant) FindPort(text string) (*Port, bool) {
	cut := strings.LastIndexByte(text, ':')
	if cut < 0 {
		return nil, false
	}
	holder, ok := p.index.find(text[:cut]).(*Holder)
	if !ok {
		return nil, false
	}
	n := 0
	for _, r := range text[cut+1:] {
		if r < '0' || r > '9' || n > len(holder.Ports) {
			return nil, false
		}
		n = n*10 + int(r-'0')
	}
	return holder.Port(n)
}

// Nearest returns the label closest to a mistyped one, or nothing.
func (p *Plant) Nearest(label string, kinds ...string) string {
	var candidates []string
	for _, k := range kinds {
		candidates = append(candidates, p.Labels(k)...)
	}
	if len(kinds) == 0 {
		for _, k := range schema.Kinds() {
			candidates = append(candidates, p.Labels(k.Name)...)
		}
	}
	return schema.Nearest(label, candidates)
}

// Items are all that have a label, each label once, in the order of the records.
func (p *Plant) Items() iter.Seq[Item] {
	return func(yield func(Item) bool) {
		if p.index == nil {
			return
		}
		for _, it := range p.index.items {
			if !yield(it) {
				return
			}
		}
	}
}

// Labels returns the labels of one kind in the order of the records.
func (p *Plant) Labels(kind string) []string { return p.index.labels(kind) }

// Name is the plant's label, or its folder where no plant record could be read.
func (p *Plant) Name() string {
	if p.Entry.Record != nil && p.Entry.Label != "" {
		return p.Entry.Label
	}
	return p.Dir
}
