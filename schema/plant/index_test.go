package plant_test

import (
	"slices"
	"testing"

	"homerun/schema"
	"homerun/schema/plant"
	"homerun/schema/plant/planttest"
)

// TestEveryLabelIsFound looks every record up by its label, in plants of all sizes up to
// some that have thousands: the first bearer of a label is found, and no label else.
func TestEveryLabelIsFound(t *testing.T) {
	t.Parallel()
	for _, runs := range []int{0, 1, 24, 700, 5_000} {
		files := read(planttest.Generate(planttest.Options{Runs: runs, Files: 3, Seed: 1}))
		files = append(files, read([]planttest.File{{Path: "z.hcl", Text: "cord \"1A\" {\n  length = \"1 m\"\n}\ncord \"Z\" {\n  length = \"2 m\"\n}\n"}})...)
		p := plant.Build(".", files)
		first := make(map[string]*schema.Record)
		labels := make(map[string][]string)
		for _, f := range files {
			for _, e := range f.Entries {
				for _, r := range append([]*schema.Record{e.Record}, e.Inner...) {
					if r.Kind.Name == schema.KindPlant || first[r.Label] != nil {
						continue
					}
					first[r.Label] = r
					labels[r.Kind.Name] = append(labels[r.Kind.Name], r.Label)
				}
			}
		}
		for label, r := range first {
			if it, ok := p.Find(label); !ok || it.Record() != r {
				t.Fatalf("%d runs: %q leads to %v, want the %s", runs, label, it, r.Kind.Name)
			}
			if it, ok := p.Find(label + "'"); ok {
				t.Fatalf("%d runs: %q leads to a %s", runs, label+"'", it.Place().Kind.Name)
			}
		}
		for _, k := range schema.Kinds() {
			if got := p.Labels(k.Name); !slices.Equal(got, labels[k.Name]) {
				t.Errorf("%d runs: %d labels of %s, want %d", runs, len(got), k.Plural, len(labels[k.Name]))
			}
		}
	}
}

// TestListsDoNotGrowIntoEachOther adds to lists that are cut from longer ones.
func TestListsDoNotGrowIntoEachOther(t *testing.T) {
	t.Parallel()
	p := plant.Build(".", read(planttest.Generate(planttest.Options{Runs: 96, Files: 2, Seed: 1})))
	runs, links := slices.Clone(p.Runs), slices.Clone(p.Links)
	stranger := &plant.Run{}
	for _, b := range p.Bundles {
		_ = append(b.Runs, stranger)
	}
	for _, l := range p.Links {
		_ = append(l.Runs, stranger)
	}
	for _, c := range p.Channels {
		_ = append(c.Links, nil)
	}
	if !slices.Equal(p.Runs, runs) || !slices.Equal(p.Links, links) {
		t.Error("a list that somebody adds to writes into another")
	}
	for _, l := range p.Links {
		if l.Lead() == stranger || l.Channel == nil || l.Channel.Links[0] == nil {
			t.Fatal("a list that somebody adds to writes into another")
		}
	}
}
