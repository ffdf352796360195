package again_test

import (
	"fmt"
	"maps"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"homerun/schema"
	"homerun/schema/unit"
)

// Records that only move state the same, but what is found may name the first of
// several. These tests move them while findings stand about them, about what they
// name and about others, and while labels are given twice.

// A shelf is a plant as blocks of text, in the files that they stand in.
type shelf map[string][]string

func (s shelf) copy() shelf {
	now := make(shelf, len(s))
	for path, all := range s {
		now[path] = slices.Clone(all)
	}
	return now
}

// files reads the files that hold anything; what was read before stays the same file.
func (s shelf) files(r *schema.Reader, was map[string]*schema.File, texts map[string]string) map[string]*schema.File {
	next := make(map[string]*schema.File)
	for path, all := range s {
		if len(all) == 0 {
			continue
		}
		text := strings.Join(all, "\n")
		if was[path] != nil && texts[path] == text {
			next[path] = was[path]
			continue
		}
		texts[path], next[path] = text, r.ReadFile(path, text)
	}
	return next
}

// A mover goes from shelf to shelf.
type mover struct {
	*trail
	reader *schema.Reader
	texts  map[string]string
	today  unit.Date
}

func newMover(today unit.Date) *mover {
	return &mover{trail: newTrail(), reader: schema.NewReader(), texts: make(map[string]string), today: today}
}

func (m *mover) to(t rapid.TB, s shelf) {
	t.Helper()
	m.trail.to(t, s.files(m.reader, m.files, m.texts), m.today)
}

// The files of a shelf: one that sorts before the plant's own and one after it.
const (
	front = "a.hcl"
	own   = "plant.hcl"
	back  = "z.hcl"
)

// TestMovedBlocks moves every second block of each case before all others and behind them,
// into another file and in its own, turns the file round and renames it.
func TestMovedBlocks(t *testing.T) {
	t.Parallel()
	today := day(t, "2026-06-15")
	for n, text := range caseTexts(t) {
		t.Run(fmt.Sprint(n), func(t *testing.T) {
			t.Parallel()
			m := newMover(today)
			all := blocks(text)
			m.to(t, shelf{own: all})
			for i, block := range all {
				if i%2 != n%2 {
					continue
				}
				others := slices.Delete(slices.Clone(all), i, i+1)
				for _, s := range []shelf{
					{front: {block}, own: others},
					{own: others, back: {block}},
					{own: slices.Concat([]string{block}, others)},
					{own: slices.Concat(others, []string{block})},
					{own: all},
				} {
					m.to(t, s)
				}
			}
			turned := slices.Clone(all)
			slices.Reverse(turned)
			for _, s := range []shelf{{own: turned}, {back: turned}, {back: all}, {front: all}, {own: all}} {
				m.to(t, s)
			}
			if t.Failed() {
				t.Fatalf("with the blocks of\n%s", text)
			}
		})
	}
}

// TestMovedNamesakes gives the label of every third block of each case to a second record
// that differs in one line, in the same file and in another, and lets each of the
// two be the first one.
func TestMovedNamesakes(t *testing.T) {
	t.Parallel()
	today := day(t, "2026-06-15")
	for n, text := range caseTexts(t) {
		t.Run(fmt.Sprint(n), func(t *testing.T) {
			t.Parallel()
			m := newMover(today)
			all := blocks(text)
			m.to(t, shelf{own: all})
			for i, block := range all {
				twin := lacking(block, n+i)
				if twin == "" || i%3 != n%3 {
					continue
				}
				others := slices.Delete(slices.Clone(all), i, i+1)
				for _, s := range []shelf{
					{own: all, back: {twin}},
					{front: {twin}, own: all},
					{own: slices.Concat([]string{twin}, all)},
					{own: slices.Concat(all, []string{twin})},
					{own: others, back: {twin, block}},
					{own: others, back: {block, twin}},
					{own: slices.Concat(others, []string{twin}), back: {block}},
					{own: all},
				} {
					m.to(t, s)
				}
			}
			if t.Failed() {
				t.Fatalf("with the blocks of\n%s", text)
			}
		})
	}
}

// lacking is a block without one of the lines that state a value; empty where it
// states none.
func lacking(block string, which int) string {
	lines := strings.SplitAfter(block, "\n")
	var states []int
	for k, line := range lines {
		if strings.Contains(line, " = ") && !strings.Contains(line, "{") && !strings.HasSuffix(line, "[\n") {
			states = append(states, k)
		}
	}
	if len(states) == 0 {
		return ""
	}
	k := states[which%len(states)]
	return strings.Join(slices.Delete(lines, k, k+1), "")
}

// TestMovesDrawn draws moves of the blocks of one case, several in each step and
// now and then with an edit or a second bearer of a label among them.
func TestMovesDrawn(t *testing.T) {
	t.Parallel()
	today := day(t, "2026-06-15")
	texts := caseTexts(t)
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.SampledFrom(texts).Draw(t, "case")
		s := make(shelf)
		for _, block := range blocks(text) {
			path := rapid.SampledFrom([]string{front, own, back}).Draw(t, "file")
			s[path] = append(s[path], block)
		}
		m := newMover(today)
		m.to(t, s)
		for range rapid.IntRange(1, 12).Draw(t, "steps") {
			s = s.copy()
			for range rapid.IntRange(1, 3).Draw(t, "moves") {
				s.draw(t)
			}
			m.to(t, s)
			if t.Failed() {
				t.FailNow()
			}
		}
	})
}

// draw does one thing to the blocks: most of what it may do moves them only.
func (s shelf) draw(t *rapid.T) {
	full := slices.DeleteFunc(slices.Sorted(maps.Keys(s)), func(path string) bool { return len(s[path]) == 0 })
	if len(full) == 0 {
		return
	}
	path := rapid.SampledFrom(full).Draw(t, "path")
	to := rapid.SampledFrom([]string{front, own, back}).Draw(t, "to")
	i := rapid.IntRange(0, len(s[path])-1).Draw(t, "block")
	block := s[path][i]
	insert := func(block string) {
		s[to] = slices.Insert(s[to], rapid.IntRange(0, len(s[to])).Draw(t, "place"), block)
	}
	switch rapid.SampledFrom([]string{"move", "move", "move", "turn", "rename", "twin", "lack"}).Draw(t, "deed") {
	case "move":
		s[path] = slices.Delete(s[path], i, i+1)
		insert(block)
	case "turn":
		slices.Reverse(s[path])
	case "rename":
		s[path], s[to] = s[to], s[path]
	case "twin":
		insert(block)
	case "lack":
		if less := lacking(block, rapid.IntRange(0, 7).Draw(t, "line")); less != "" {
			s[path][i] = less
		}
	}
}
