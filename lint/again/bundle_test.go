package again_test

import (
	"fmt"
	"regexp"
	"slices"
	"strings"
	"testing"

	"homerun/lint"
	"homerun/lint/again"
	"homerun/schema"
)

// bundledRun is a run inside a bundle, as the cases write it.
var bundledRun = regexp.MustCompile(`(?m)^  run "[^"]+" \{\n(?:    .*\n)*  \}\n`)

// TestBundlesRunByRun takes single runs out of the bundles of the cases and puts them
// back, in a plant that is large enough for an excerpt: what a bundle bears that
// carries power depends on all its runs together.
func TestBundlesRunByRun(t *testing.T) {
	t.Parallel()
	today := day(t, "2026-06-15")
	var others strings.Builder
	for n := range 2000 {
		fmt.Fprintf(&others, "space \"F%04d\" {\n  kind = \"work-area\"\n}\n", n)
	}
	found := 0
	for n, text := range caseTexts(t) {
		runs := bundledRun.FindAllStringIndex(text, -1)
		if len(runs) < 2 {
			continue
		}
		found++
		t.Run(fmt.Sprint(n), func(t *testing.T) {
			t.Parallel()
			m := newMover(today)
			whole := []string{text, others.String()}
			m.to(t, shelf{own: whole})
			for _, i := range []int{0, len(runs) / 2, len(runs) - 1} {
				at := runs[i]
				run := text[at[0]:at[1]]
				for _, now := range []string{"", strings.TrimSuffix(run, "  }\n") + "    state  = \"abandoned\"\n  }\n"} {
					m.to(t, shelf{own: {text[:at[0]] + now + text[at[1]:], others.String()}})
					m.to(t, shelf{own: whole})
				}
			}
			if 2*m.entire > m.steps {
				t.Errorf("%d of %d steps looked at everything: that proves nothing of excerpts", m.entire, m.steps)
			}
			if t.Failed() {
				t.Fatalf("with the runs of\n%s", text)
			}
		})
	}
	if found < 5 {
		t.Errorf("only %d cases have a bundle of several runs", found)
	}
}

// stateless is a rule that tells of a bundle how many of its runs are not stated to be
// in a state, where there are any, and names none of them.
var stateless = &lint.Rule{
	Name: "test-stateless", Title: "Checks that every run states its state", Severity: lint.Observation, Reach: lint.Along,
	Check: func(p *lint.Pass) {
		for _, b := range p.Plant.Bundles {
			n := 0
			for _, r := range b.Runs {
				if r.Own(schema.RunState.Name) == nil {
					n++
				}
			}
			if n > 0 {
				f := lint.About(b.Entry)
				f.Message = fmt.Sprintf("%d of %d runs without a state", n, len(b.Runs))
				p.Report(f)
			}
		}
	},
}

// TestRunThatAddsNothingToWhatStands takes a run out of a bundle about which something
// stands to which only the others add, so that an excerpt with this run alone shows
// nothing before and nothing after.
func TestRunThatAddsNothingToWhatStands(t *testing.T) {
	t.Parallel()
	today := day(t, "2026-06-15")
	reader := schema.NewReader()
	var others strings.Builder
	for n := range 200 {
		fmt.Fprintf(&others, "space \"F%04d\" {\n  kind = \"work-area\"\n}\n", n)
	}
	bundle := func(runs ...string) string {
		return inside + others.String() + "bundle \"B\" {\n  cable = \"c6\"\n  route = [\"1-T\"]\n" + strings.Join(runs, "") + "}\n"
	}
	stated := runText(4, "  state  = \"spare\"\n")
	s := again.New(again.Options{Dir: ".", Rules: []*lint.Rule{stateless}, Known: []string{stateless.Name}})
	var carried []string
	for _, text := range []string{bundle(runText(2, ""), runText(3, ""), stated), bundle(runText(2, ""), runText(3, ""))} {
		files := map[string]*schema.File{own: reader.ReadFile(own, text)}
		step, err := s.Step([]again.Change{{Path: own, File: files[own]}}, today)
		if err != nil {
			t.Fatal(err)
		}
		carried = slices.DeleteFunc(carried, func(f string) bool { return slices.Contains(told(step.Gone), f) })
		carried = append(carried, told(step.Come)...)
		if want := wholeBy(t, []*lint.Rule{stateless}, files); !slices.Equal(carried, want) {
			t.Fatalf("carried\n%q\nwhole\n%q", carried, want)
		}
	}
}
