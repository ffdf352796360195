package again_test

import (
	"maps"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"homerun/schema"
	"homerun/schema/plant/planttest"
)

// TestEditsOfAPlant edits a generated plant line by line and block by block, so that
// excerpts are a small part of it, returns now and then to an earlier state, and holds
// what is carried against the whole.
func TestEditsOfAPlant(t *testing.T) {
	t.Parallel()
	today := day(t, "2026-06-15")
	reader := schema.NewReader()
	steps, entire := 0, 0
	rapid.Check(t, func(t *rapid.T) {
		texts, files := generated(reader, planttest.Options{Runs: 144, Files: 3, Seed: 1})
		w := newTrail()
		w.to(t, files, today)
		stops, written := []stop{w.stop()}, []map[string]string{maps.Clone(texts)}
		for range rapid.IntRange(1, 20).Draw(t, "edits") {
			before := maps.Clone(texts)
			edit(t, texts)
			next := maps.Clone(w.files)
			for path, text := range texts {
				if text != before[path] {
					next[path] = reader.ReadFile(path, text)
				}
			}
			w.to(t, next, today)
			if t.Failed() {
				t.FailNow()
			}
			stops, written = append(stops, w.stop()), append(written, maps.Clone(texts))
			if rapid.IntRange(0, 3).Draw(t, "return") == 0 {
				i := rapid.IntRange(0, len(stops)-1).Draw(t, "to")
				w.back(t, stops[i])
				texts = maps.Clone(written[i])
			}
		}
		steps, entire = steps+w.steps, entire+w.entire
	})
	if 2*entire > steps {
		t.Errorf("%d of %d steps looked at everything: that proves nothing of excerpts", entire, steps)
	}
}

// paths are the files of the generated plant.
var paths = []string{"plant.hcl", "runs/part-001.hcl", "runs/part-002.hcl", "runs/part-003.hcl"}

// edit changes something in one of the texts, sound or not.
func edit(t *rapid.T, texts map[string]string) {
	path := rapid.SampledFrom(paths).Draw(t, "file")
	all := blocks(texts[path])
	if len(all) == 0 {
		return
	}
	i := rapid.IntRange(0, len(all)-1).Draw(t, "block")
	lines := strings.SplitAfter(all[i], "\n")
	k := rapid.IntRange(0, len(lines)-1).Draw(t, "line")
	states := strings.Contains(lines[k], " = ")
	switch rapid.SampledFrom([]string{"remove", "move", "swap", "unstate", "unstate", "unstate", "restate", "restate", "restate", "restate", "restate"}).Draw(t, "edit") {
	case "remove":
		all = slices.Delete(all, i, i+1)
	case "move":
		if other := rapid.SampledFrom(paths).Draw(t, "to"); other != path {
			texts[other] += "\n" + all[i]
			all = slices.Delete(all, i, i+1)
		}
	case "swap":
		j := rapid.IntRange(0, len(all)-1).Draw(t, "with")
		all[i], all[j] = all[j], all[i]
	case "unstate":
		if states {
			lines[k] = ""
			all[i] = strings.Join(lines, "")
		}
	case "restate": // another figure, word or port
		if states || strings.Contains(lines[k], "{") {
			lines[k] = swaps[rapid.IntRange(0, len(swaps)-1).Draw(t, "swap")].Replace(lines[k])
			all[i] = strings.Join(lines, "")
		}
	}
	texts[path] = strings.Join(all, "")
}

// swaps are what an edit puts in the place of what is written.
var swaps = []*strings.Replacer{
	strings.NewReplacer("0", "9"), strings.NewReplacer("1", "2"), strings.NewReplacer("2", "1"), strings.NewReplacer("9", "0"), strings.NewReplacer("3", "1"),
	strings.NewReplacer("A-A", "A-B"), strings.NewReplacer("A-B", "A-C"), strings.NewReplacer("c6a-cmp", "cord-6a"), strings.NewReplacer(" m\"", "0 m\""),
	strings.NewReplacer("10GBASE-T", "1000BASE-LX"), strings.NewReplacer("pass", "fail"), strings.NewReplacer("CMP", "CM"), strings.NewReplacer("6A", "5e"),
	strings.NewReplacer("U/UTP", "S/FTP"), strings.NewReplacer("unscreened", "screened"), strings.NewReplacer("space", "note"), strings.NewReplacer("length", "slack"),
	strings.NewReplacer("A", "a"), strings.NewReplacer("route", "power"), strings.NewReplacer("TIA-568", "ISO-11801"), strings.NewReplacer("\"pass\"", "\""),
}
