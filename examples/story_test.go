package examples_test

import (
	"regexp"
	"strings"
	"testing"

	"homerun/schema"
	"homerun/schema/unit"
)

func TestStoryIsToldInOrder(t *testing.T) {
	t.Parallel()
	all := states(t)
	if len(all) < 14 {
		t.Errorf("%d commits, at least 14 are promised", len(all))
	}
	for i := 1; i < len(all); i++ {
		if !all[i].Commit.When.After(all[i-1].Commit.When) {
			t.Errorf("%s is not later than what comes before it", all[i].Commit.Subject)
		}
	}
}

// Addresses end in .example, a name that RFC 2606, section 2, keeps free for
// examples, so that nobody's address is in the demo.
func TestStoryNamesNobody(t *testing.T) {
	t.Parallel()
	reserved := regexp.MustCompile(`^[a-z]+@[a-z-]+\.example$`)
	for _, s := range states(t) {
		if !reserved.MatchString(s.Commit.Email) {
			t.Errorf("%s: %s is not a reserved address", s.Commit.Subject, s.Commit.Email)
		}
	}
}

func TestEveryCommitChangesSomething(t *testing.T) {
	t.Parallel()
	for _, s := range states(t) {
		changed := len(s.Commit.Delete)
		for p, text := range s.Commit.Write {
			if s.Before[p] != text {
				changed++
			} else {
				t.Errorf("%s writes %s as it was", s.Commit.Subject, p)
			}
			if !schema.IsRecords(p) || strings.HasPrefix(p, "/") || strings.Contains(p, "..") {
				t.Errorf("%s writes %s, which is no file of records below the plant", s.Commit.Subject, p)
			}
		}
		if changed == 0 && s.Commit.Merge == "" {
			t.Errorf("%s changes nothing", s.Commit.Subject)
		}
	}
}

// What the work order and the history have to be shown on: each of these is
// in the story, by the record that it happens to.
func TestStoryTellsEveryKindOfChange(t *testing.T) {
	t.Parallel()
	all := states(t)
	value := func(files map[string]string, label, field string) string {
		it, ok := build(files).Find(label)
		if !ok {
			return "gone"
		}
		f, _ := it.Place().Kind.Field(field)
		v := it.Record().Own(f.Name)
		if v == nil {
			return ""
		}
		return v.Show(unit.Metric)
	}
	for _, want := range []struct{ what, subject, label, field, before, after string }{
		{"an install", "Install the east side", "1A-A01", "state", "planned", ""},
		{"a removal", "Remove the abandoned", "1A-V05", "state", "abandoned", "gone"},
		{"a tag for future use", "Take the old wing", "1A-V03", "state", "", "tagged"},
		{"a move", "Move 1A-A16", "1A-A16", "to", "1.104:4", "1.103:5"},
		{"a renamed panel", "Rename the camera panel", "1A-D", "former", "gone", "1A-K"},
		{"a relabel", "Rename the camera panel", "1A-D02", "former", "gone", "1A-K02"},
		{"one side of a swap", "Swap the switch ports", "1A-PC013", "to", "1A-SW1:13", "1A-SW1:14"},
		{"the other side of it", "Swap the switch ports", "1A-PC014", "to", "1A-SW1:14", "1A-SW1:13"},
		{"a correction on paper", "Correct two lengths", "1A-D02", "length", "48.5 m", "47 m"},
		{"a waiver", "Pull the camera of the far gate", "W-2021-01", "rule", "gone", "length-permanent-link"},
		{"a policy", "Keep five metres", "P-2020-01", "limit", "gone", "85 m"},
	} {
		found := false
		for _, s := range all {
			if !strings.HasPrefix(s.Commit.Subject, want.subject) {
				continue
			}
			found = true
			if got := value(s.Before, want.label, want.field); got != want.before {
				t.Errorf("%s: %s %s was %q, want %q", want.what, want.label, want.field, got, want.before)
			}
			if got := value(s.Files, want.label, want.field); got != want.after {
				t.Errorf("%s: %s %s is %q, want %q", want.what, want.label, want.field, got, want.after)
			}
		}
		if !found {
			t.Errorf("%s: no commit begins %q", want.what, want.subject)
		}
	}
}
