package cli_test

import (
	"encoding/json"
	"errors"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

// typed runs a command line as a reader of the report would. Some programs say with
// their status what they found.
func (r *room) typed(dir, line string) string {
	r.t.Helper()
	cmd := exec.Command("sh", "-c", line)
	cmd.Dir, cmd.Env = dir, r.env
	out, err := cmd.Output()
	found := strings.HasPrefix(line, "diff ") || strings.HasPrefix(line, "git homerun lint ")
	if exit, ended := errors.AsType[*exec.ExitError](err); ended && found && exit.ExitCode() == 1 {
		err = nil
	}
	if err != nil {
		r.t.Fatalf("%s: %v\n%s", line, err, out)
	}
	return strings.TrimSpace(string(out))
}

// printed finds the command of a figure.
func (a *auditTold) printed(t *testing.T, figure string) string {
	t.Helper()
	for _, c := range a.Commands {
		if strings.HasPrefix(c.Figure, figure) {
			return c.Command
		}
	}
	t.Fatalf("no command for %q in %+v", figure, a.Commands)
	return ""
}

func lines(text string) int {
	return len(strings.FieldsFunc(text, func(r rune) bool { return r == '\n' }))
}

// TestPrintedCommandsGiveTheFigures runs the very commands that a report prints.
func TestPrintedCommandsGiveTheFigures(t *testing.T) {
	t.Parallel()
	for name, span := range map[string]string{"whole": "HEAD", "part": "HEAD~30..HEAD"} {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			r := newRoom(t)
			r.pastOf(4, 140)
			r.mustGit(r.dir, "tag", "audited")
			r.mustGit(r.dir, "reset", "-q", "--hard", "HEAD~3")
			told := r.audit("--formerly", "audited", span)
			for _, c := range told.Commands {
				if strings.Contains(c.Command, "FILE") || strings.Contains(c.Command, "LABEL") {
					t.Errorf("%s: %q is for somebody to fill in", c.Figure, c.Command)
				}
			}
			if name == "whole" && len(told.Repeated) == 0 {
				t.Error("no record was changed again and again: the history is too short")
			}
			told.checkGit(t, r)
			told.checkLinter(t, r)
			var again auditTold
			if err := json.Unmarshal([]byte(r.typed(r.dir, told.printed(t, "the whole report"))), &again); err != nil {
				t.Fatal(err)
			}
			if !slices.Equal(again.points(), told.points()) || len(again.Findings) != len(told.Findings) || len(again.Lost) != len(told.Lost) {
				t.Errorf("the report made again has other figures: %+v and %+v", again, told)
			}
		})
	}
}

func (a *auditTold) points() []string {
	var list []string
	for _, p := range a.Points {
		text, _ := json.Marshal(p)
		list = append(list, string(text))
	}
	return list
}

func (a *auditTold) checkGit(t *testing.T, r *room) {
	t.Helper()
	run := func(figure string) string { return r.typed(r.dir, a.printed(t, figure)) }
	if got, want := run("commits of the period"), a.Commits; atoi(t, got) != want {
		t.Errorf("%s commits, told %d", got, want)
	}
	if got, want := run("commits of the line"), a.Line; atoi(t, got) != want {
		t.Errorf("%s commits of the line, told %d", got, want)
	}
	// Every commit of this past touches records, but for those that repeat a state.
	if got, want := lines(run("commits made straight")), len(a.Direct); got < want || want == 0 {
		t.Errorf("%d commits straight on the line, told %d", got, want)
	}
	if got, want := strings.Count(run("signatures")+"\n", " N\n"), a.Signatures["none"]; got != want || want == 0 {
		t.Errorf("%d commits without a signature, told %d", got, want)
	}
	if got, want := lines(run("what audited leads to")), len(a.Lost[0].Commits); got != want || want == 0 {
		t.Errorf("%d commits lost, told %d", got, want)
	}
	if len(a.Repeated) == 0 {
		return // such a command is printed only where there is such a record
	}
	// The life begins with the commit that brought the record, which is no change.
	if said := run("the life of a record"); !strings.Contains(a.printed(t, "the life of a record"), a.Repeated[0].Record) || strings.Count(said, "\n    commit ") < a.Repeated[0].Times {
		t.Errorf("%s was changed %d times: %s", a.Repeated[0].Record, a.Repeated[0].Times, said)
	}
}

func (a *auditTold) checkLinter(t *testing.T, r *room) {
	t.Helper()
	var at, came lintTold
	if err := json.Unmarshal([]byte(r.typed(r.dir, a.printed(t, "what stands at the end"))), &at); err != nil {
		t.Fatal(err)
	}
	last := a.Points[len(a.Points)-1]
	if at.Summary.Nonconformity != last.Nonconformity || at.Summary.Waived != last.Waived {
		t.Errorf("the linter says %+v, told %+v", at.Summary, last)
	}
	line := a.printed(t, "what a commit introduced")
	if err := json.Unmarshal([]byte(r.typed(r.dir, line)), &came); err != nil {
		t.Fatal(err)
	}
	for _, f := range a.Findings {
		if f.Introduced == nil || !strings.HasSuffix(line, f.Introduced.Commit) {
			continue
		}
		if !slices.ContainsFunc(came.Findings, func(c struct{ Fingerprint, Rule, Record, Severity, Waiver string }) bool {
			return c.Rule == f.Rule && c.Record == f.Record
		}) {
			t.Errorf("%s does not give %s of %s", line, f.Rule, f.Record)
		}
	}
}

func atoi(t *testing.T, text string) int {
	t.Helper()
	n := 0
	if err := json.Unmarshal([]byte(text), &n); err != nil {
		t.Fatal(err)
	}
	return n
}

// TestTheNotesOfABundleHold unpacks a bundle and runs what it says about checking
// it with other programs.
func TestTheNotesOfABundleHold(t *testing.T) {
	t.Parallel()
	for _, program := range []string{"sha256sum", "unzip", "diff"} {
		if _, err := exec.LookPath(program); err != nil {
			t.Skipf("%s is not installed", program)
		}
	}
	r := newRoom(t)
	r.pastOf(8, 40)
	// The base of the period and a former state that the last commit does not lead to.
	r.mustGit(r.dir, "branch", "was", "HEAD")
	r.mustGit(r.dir, "reset", "-q", "--hard", "HEAD~4")
	r.mustGit(r.dir, "commit", "-q", "--allow-empty", "-m", "another way")
	dir := t.TempDir()
	file := filepath.Join(dir, "evidence.zip")
	said := r.in(r.dir, 0, "audit", "--bundle", file, "--formerly", "was", "was~1..HEAD")
	if checked := r.in(dir, 0, "audit", "--verify", file); !strings.Contains(checked, "everything holds") {
		t.Fatal(checked)
	}
	r.typed(dir, "unzip -q evidence.zip")
	notes, err := os.ReadFile(filepath.Join(dir, "READ-ME.txt"))
	if err != nil {
		t.Fatal(err)
	}
	var answers []string
	for line := range strings.Lines(string(notes)) {
		if command, is := strings.CutPrefix(line, "    "); is {
			out := r.typed(dir, strings.TrimSpace(command))
			answers = append(answers, out)
		}
	}
	if len(answers) != 9 {
		t.Fatalf("%d commands in the notes", len(answers))
	}
	digest, _, _ := strings.Cut(answers[1], " ")
	if answers[0] != "" || !strings.Contains(strings.Join(strings.Fields(said), " "), "--digest "+digest) || answers[6] != "" {
		t.Errorf("the files and commits are whole, said %q", answers)
	}
	if answers[5] != r.ask("rev-parse", "HEAD") {
		t.Errorf("the last commit is %s", answers[5])
	}
	for line := range strings.Lines(answers[7]) {
		if !strings.HasPrefix(line, "Only in plant") {
			t.Errorf("the records differ: %s", line)
		}
	}
	var told, again auditTold
	report, err := os.ReadFile(filepath.Join(dir, "report", "audit.json"))
	if err != nil {
		t.Fatal(err)
	}
	for text, into := range map[string]*auditTold{string(report): &told, answers[8]: &again} {
		if err := json.Unmarshal([]byte(text), into); err != nil {
			t.Fatal(err)
		}
	}
	if !slices.Equal(told.points(), again.points()) || len(told.Lost) != 1 || len(again.Lost) != 1 || len(told.Lost[0].Commits) != len(again.Lost[0].Commits) {
		t.Errorf("made again by hand: %+v, told %+v", again, told)
	}
}
