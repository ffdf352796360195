package again_test

import (
	"fmt"
	"maps"
	"math/rand/v2"
	"strings"
	"testing"

	"homerun/schema"
	"homerun/schema/plant/planttest"
)

// TestEditsOfAPlant edits a generated plant line by line and block by block, so that
// excerpts are a small part of it.
func TestEditsOfAPlant(t *testing.T) {
	t.Parallel()
	for seed := range uint64(4) {
		t.Run(fmt.Sprint(seed), func(t *testing.T) {
			t.Parallel()
			edits(t, seed, 150)
		})
	}
}

func edits(t *testing.T, seed uint64, n int) {
	t.Helper()
	today := day(t, "2026-06-15")
	random := rand.New(rand.NewPCG(seed, 7))
	reader := schema.NewReader()
	texts := make(map[string]string)
	files := make(map[string]*schema.File)
	for _, f := range planttest.Generate(planttest.Options{Runs: 240, Files: 5, Seed: seed}) {
		texts[f.Path] = f.Text
		files[f.Path] = reader.ReadFile(f.Path, f.Text)
	}
	w := newTrail()
	w.to(t, files, today)
	paths := []string{"plant.hcl", "runs/part-001.hcl", "runs/part-002.hcl", "runs/part-003.hcl", "runs/part-004.hcl", "runs/part-005.hcl"}
	for i := range n {
		path := paths[random.IntN(len(paths))]
		what := edit(random, texts, path)
		next := maps.Clone(w.files)
		for path, text := range texts {
			if old := next[path]; old == nil || reader.ReadFile(path, text) != old {
				next[path] = reader.ReadFile(path, text)
			}
		}
		step := w.to(t, next, today)
		if t.Failed() {
			t.Fatalf("edit %d of seed %d: %s; looked at %d records, whole: %t", i, seed, what, step.Size, step.Whole)
		}
	}
	t.Logf("%d steps, %d of them entire, %d records looked at in a step", w.steps, w.entire, w.size/w.steps)
}

// edit changes something in one of the texts, sound or not, and says what.
func edit(random *rand.Rand, texts map[string]string, path string) string {
	all := blocks(texts[path])
	i := random.IntN(len(all))
	what := strings.TrimSpace(strings.SplitN(strings.TrimSpace(all[i]), "\n", 2)[0])
	lines := strings.SplitAfter(all[i], "\n")
	k := random.IntN(len(lines))
	switch act := random.IntN(12); act {
	case 0: // take a block out
		all = append(all[:i], all[i+1:]...)
		what = "without " + what
	case 1: // move a block to another file
		other := "runs/part-00" + fmt.Sprint(1+random.IntN(5)) + ".hcl"
		if other != path {
			texts[other] += "\n" + all[i]
			all = append(all[:i], all[i+1:]...)
		}
		what = "to " + other + " " + what
	case 2: // change the order
		j := random.IntN(len(all))
		all[i], all[j] = all[j], all[i]
		what = "changed places " + what
	case 3, 4, 5: // take a line out
		if strings.Contains(lines[k], " = ") {
			what += " without " + lines[k]
			lines[k] = ""
			all[i] = strings.Join(lines, "")
		}
	default: // change a figure, a word or a port
		if !strings.Contains(lines[k], " = ") && !strings.Contains(lines[k], "{") {
			break
		}
		now := swaps[random.IntN(len(swaps))].Replace(lines[k])
		what += ": " + strings.TrimSpace(lines[k]) + " -> " + strings.TrimSpace(now)
		lines[k] = now
		all[i] = strings.Join(lines, "")
	}
	texts[path] = strings.Join(all, "")
	return what
}

// swaps are what an edit puts in the place of what is written.
var swaps = []*strings.Replacer{
	strings.NewReplacer("0", "9"), strings.NewReplacer("1", "2"), strings.NewReplacer("2", "1"), strings.NewReplacer("9", "0"), strings.NewReplacer("3", "1"),
	strings.NewReplacer("A-A", "A-B"), strings.NewReplacer("A-B", "A-C"), strings.NewReplacer("c6a-cmp", "cord-6a"), strings.NewReplacer(" m\"", "0 m\""),
	strings.NewReplacer("10GBASE-T", "1000BASE-LX"), strings.NewReplacer("pass", "fail"), strings.NewReplacer("CMP", "CM"), strings.NewReplacer("6A", "5e"),
	strings.NewReplacer("U/UTP", "S/FTP"), strings.NewReplacer("unscreened", "screened"), strings.NewReplacer("space", "note"), strings.NewReplacer("length", "slack"),
	strings.NewReplacer("A", "a"), strings.NewReplacer("route", "power"), strings.NewReplacer("TIA-568", "ISO-11801"), strings.NewReplacer("\"pass\"", "\""),
}
