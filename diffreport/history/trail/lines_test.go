package trail_test

import (
	"os/exec"
	"regexp"
	"slices"
	"strings"
	"testing"

	"homerun/diffreport/history"
	"homerun/schema/plant/planttest"
)

// said is what git prints.
func (p *past) said(t *testing.T, args ...string) string {
	t.Helper()
	cmd := exec.CommandContext(t.Context(), "git", args...)
	cmd.Dir = p.dir
	out, err := cmd.Output()
	if err != nil {
		t.Fatalf("git %v: %v", args, err)
	}
	return string(out)
}

var space = regexp.MustCompile(`\s+`)

// block is the lines of a run in a file at a commit, as git shows it, without
// their layout; empty where it is not there.
func (p *past) block(t *testing.T, commit, file, label string) string {
	t.Helper()
	cmd := exec.CommandContext(t.Context(), "git", "show", commit+":"+file)
	cmd.Dir = p.dir
	text, err := cmd.Output()
	if err != nil {
		return "" // there was no such file
	}
	_, rest, found := strings.Cut(string(text), `run "`+label+`" {`)
	if !found {
		return ""
	}
	inner, _, _ := strings.Cut(rest, "}")
	return "{" + space.ReplaceAllString(inner, " ")
}

// TestALifeIsWhatGitSaysOfItsLines holds lives in a history without new labels
// against git log -L, which is told the file and follows its lines, git log
// --follow and git show. What a line does not tell is what a run takes from the
// bundle around it; what lines tell and a life does not is layout.
func TestALifeIsWhatGitSaysOfItsLines(t *testing.T) {
	t.Parallel()
	if testing.Short() {
		t.Skip("most of the time is git's own")
	}
	p := makePast(t, planttest.PastOptions{Runs: 72, Files: 5, Commits: 150, Seed: 11, Steady: true})
	tr := p.trail(t)
	compared := 0
	for i, label := range p.truth.Labels {
		if i%4 != 0 {
			continue
		}
		file, _, there := strings.Cut(strings.TrimPrefix(firstLine(p.grep(t, `run "`+label+`" {`)), "HEAD:"), ":")
		if !there {
			continue // not a run, or not there any more
		}
		h, err := history.Of(history.Asked{Label: label}, tr.Steps())
		if err != nil {
			t.Fatal(err)
		}
		follow := strings.Fields(p.said(t, "log", "--follow", "--format=%H", "--", file))
		var mine, earlier []string
		for _, e := range h.Events {
			if e.Life != h.Lives {
				earlier = append(earlier, e.ID)
			} else if slices.ContainsFunc(e.Fields, func(f history.FieldChange) bool { return f.Name != "cable" }) {
				mine = append(mine, e.ID)
				if !slices.Contains(follow, e.ID) {
					t.Errorf("%s: %s is no commit of its file: git log --follow -- %s", label, e.ID, file)
				}
			}
		}
		var lines []string
		for at := range strings.FieldsSeq(p.said(t, "log", "-s", "--format=%H", "-L", `/run "`+label+`" {/,/}/:`+file)) {
			if p.changedAt(t, at, label) {
				lines = append(lines, at)
			}
		}
		// Lines that come where others go are followed into an earlier life.
		for len(lines) > len(mine) && slices.Contains(earlier, lines[len(lines)-1]) {
			lines = lines[:len(lines)-1]
		}
		if !slices.Equal(mine, lines) {
			t.Errorf("%s in %s: told %v, git log -L %v", label, file, mine, lines)
		}
		compared += len(lines)
	}
	if compared < 30 {
		t.Errorf("only %d events tell nothing", compared)
	}
}

func firstLine(text string) string {
	line, _, _ := strings.Cut(text, "\n")
	return line
}

func (p *past) grep(t *testing.T, text string) string {
	t.Helper()
	cmd := exec.CommandContext(t.Context(), "git", "grep", "-F", text, "HEAD")
	cmd.Dir = p.dir
	out, _ := cmd.Output() // it fails where nothing is found
	return string(out)
}

// changedAt says whether a commit changed what a run states itself.
func (p *past) changedAt(t *testing.T, commit, label string) bool {
	t.Helper()
	was, is := "", ""
	for line := range strings.Lines(p.said(t, "diff-tree", "-r", "--root", "--no-commit-id", "--name-only", "--no-renames", commit)) {
		file := strings.TrimSpace(line)
		was += p.block(t, commit+"^", file, label)
		is += p.block(t, commit, file, label)
	}
	return was != is
}
