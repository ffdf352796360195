package again_test

import (
	"fmt"
	"regexp"
	"strings"
	"testing"
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
			if m.entire > 1 {
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
