package again_test

import (
	"maps"
	"strings"
	"testing"

	"homerun/examples"
	"homerun/schema"
	"homerun/schema/unit"
)

// TestStory goes through the states of the story, with the waivers of each day, and
// from each of them back to the first and on again, once by judging the way and once
// by returning.
func TestStory(t *testing.T) {
	t.Parallel()
	commits, err := examples.Story()
	if err != nil || len(commits) == 0 {
		t.Fatalf("no story: %v", err)
	}
	reader := schema.NewReader()
	w, far := newTrail(), newTrail()
	var first map[string]*schema.File
	var stops []stop
	for _, c := range commits {
		next := maps.Clone(w.files)
		for path, text := range c.Write {
			if strings.HasSuffix(path, ".hcl") {
				next[path] = reader.ReadFile(path, text)
			}
		}
		for _, path := range c.Delete {
			delete(next, path)
		}
		today := unit.DateOf(c.When)
		w.to(t, next, today)
		if first == nil {
			first = next
		}
		far.to(t, first, today)
		far.to(t, next, today)
		if stops = append(stops, w.stop()); len(stops) > 1 {
			w.back(t, stops[0])
			w.back(t, stops[len(stops)-1])
		}
		if t.Failed() {
			t.Fatalf("at %q", c.Subject)
		}
	}
}

// TestADayThatEndsAWaiver lets the days go by over records that stay as they are.
func TestADayThatEndsAWaiver(t *testing.T) {
	t.Parallel()
	reader := schema.NewReader()
	for _, text := range caseTexts(t) {
		if !strings.Contains(text, "waiver ") {
			continue
		}
		w := newTrail()
		files := map[string]*schema.File{"plant.hcl": reader.ReadFile("plant.hcl", text)}
		for _, today := range []string{"2020-01-01", "2026-06-15", "2031-01-01", "2026-06-15"} {
			w.to(t, files, day(t, today))
		}
	}
}
