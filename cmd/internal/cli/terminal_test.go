//go:build linux

package cli_test

import (
	"bytes"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"syscall"
	"testing"
	"time"
)

// onTerminal runs a command line with a terminal for its outputs and returns
// what the terminal got.
func (r *room) onTerminal(line string) string {
	r.t.Helper()
	script, err := exec.LookPath("script")
	if err != nil {
		r.t.Skip("script is not here")
	}
	cmd := exec.Command(script, "-qec", line, os.DevNull)
	cmd.Dir, cmd.Env = r.dir, slices.Concat(r.env, []string{"TERM=xterm", "NO_COLOR=1", "SHELL=/bin/sh"})
	out, err := cmd.CombinedOutput()
	if err != nil {
		r.t.Fatalf("%s: %v\n%s", line, err, out)
	}
	return strings.ReplaceAll(string(out), "\r\n", "\n")
}

// slowGit puts a git before the real one that takes its time for what is read
// from a repository, and says when it has begun.
func (r *room) slowGit(seconds string) (begun string) {
	r.t.Helper()
	git, err := exec.LookPath("git")
	if err != nil {
		r.t.Fatal(err)
	}
	dir := filepath.Join(filepath.Dir(r.dir), "slow")
	begun = filepath.Join(filepath.Dir(r.dir), "begun")
	text := fmt.Sprintf("#!/bin/sh\ncase \"$*\" in\n*rev-parse*) : >%q; exec 3>&1; sleep %s ;;\nesac\nexec %q \"$@\"\n", begun, seconds, git)
	if err := os.MkdirAll(dir, 0o755); err != nil {
		r.t.Fatal(err)
	}
	if err := os.WriteFile(filepath.Join(dir, "git"), []byte(text), 0o755); err != nil { //nolint:gosec // a program has to be executable
		r.t.Fatal(err)
	}
	r.env = append(r.env, "PATH="+dir+string(os.PathListSeparator)+filepath.Dir(r.program)+string(os.PathListSeparator)+os.Getenv("PATH"))
	return begun
}

// TestPager pages on a terminal with the user's pager, and with nothing else.
func TestPager(t *testing.T) {
	t.Parallel()
	r := newRoom(t)
	r.mustGit(r.dir, "config", "core.pager", "touch forged; sed s/^/repository:/")
	for _, c := range []struct {
		name, line, want string
	}{
		{"the user's", "GIT_PAGER='sed s/^/mine:/' git homerun lint", "mine:pier, working tree: "},
		{"of PAGER", "PAGER='sed s/^/mine:/' git homerun lint", "mine:pier, working tree: "},
		{"for once", "git -c core.pager='sed s/^/once:/' homerun lint", "once:pier, working tree: "},
		{"none", "git --no-pager homerun lint", "pier, working tree: "},
		{"none as a rule", "git -c pager.homerun=false homerun lint", "pier, working tree: "},
		{"by git itself", "git -c core.pager='sed s/^/git:/' -p homerun lint", "git:pier, working tree: "},
		{"for programs", "GIT_PAGER='sed s/^/mine:/' git homerun lint | cat", "pier, working tree: "},
		{"into a file", "GIT_PAGER='sed s/^/mine:/' git homerun lint -o out; cat out", "pier, working tree: "},
		{"short commands", "GIT_PAGER='sed s/^/mine:/' git homerun fmt --check; echo done", "done"},
		{"in a hook", "GIT_PAGER='sed s/^/mine:/' git homerun lint --hook; echo done", "git homerun: "},
		{"its options", "GIT_PAGER='echo $LESS; cat >/dev/null' git homerun lint", "FRX"},
		{"the user's options", "LESS=R GIT_PAGER='echo $LESS; cat >/dev/null' git homerun lint", "R\n"},
	} {
		if got := r.onTerminal(c.line); !strings.HasPrefix(got, c.want) || strings.Contains(got, "mine:") != strings.HasPrefix(c.want, "mine:") {
			t.Errorf("%s: %q, want %q first", c.name, got, c.want)
		}
	}
	if _, err := os.Stat(filepath.Join(r.dir, "forged")); err == nil {
		t.Error("the pager that the repository names was run")
	}
}

// TestPagerIsLeft reads one line of much text: leaving is no failure, and the
// exit status is that of the findings.
func TestPagerIsLeft(t *testing.T) {
	t.Parallel()
	r := newRoom(t)
	r.write("wrong.hcl", strings.Repeat("space \"1A\" {\n  kind = \"corridoor\"\n}\n", 2000))
	got := r.onTerminal("GIT_PAGER='head -n 1' git homerun lint --most 0; echo status $?")
	if lines := strings.Split(strings.TrimSpace(got), "\n"); len(lines) != 2 || !strings.HasPrefix(lines[0], "wrong.hcl:") || lines[1] != "status 1" {
		t.Errorf("%q", got)
	}
}

// TestProgress waits for slow work: on a terminal that is told after a second
// and taken away again, anywhere else it is not.
func TestProgress(t *testing.T) {
	t.Parallel()
	r := newRoom(t)
	quick := r.onTerminal("git --no-pager homerun lint")
	r.slowGit("2.5")
	slow := r.onTerminal("git-homerun lint | cat")
	// How many seconds are told depends on the machine, but not that they are wiped out.
	told, ended := strings.CutSuffix(slow, "\r\x1b[K"+quick)
	if !ended || !regexp.MustCompile(`^\r\x1b\[Kreading the records, 1 s(\r\x1b\[Kreading the records, \d+ s)*$`).MatchString(told) {
		t.Errorf("slow work: %q", slow)
	}
	if paged := r.onTerminal("GIT_PAGER_IN_USE=true git-homerun lint | cat"); paged != quick {
		t.Errorf("below git's own pager: %q, want %q", paged, quick)
	}
	if out, status := r.homerun("lint"); status != 0 || out != quick {
		t.Errorf("without a terminal: exit status %d, %q", status, out)
	}
}

// TestInterruption ends a run in the middle: what was there stays, nothing is
// left beside it, no child goes on, and the shell learns why.
func TestInterruption(t *testing.T) {
	t.Parallel()
	r := newRoom(t)
	r.write("report", "of yesterday")
	begun := r.slowGit("30")
	cmd := exec.Command(r.program, "lint", "--format", "sarif", "--output", "report")
	cmd.Dir, cmd.Env, cmd.SysProcAttr = r.dir, r.env, &syscall.SysProcAttr{Setpgid: true}
	var said bytes.Buffer
	cmd.Stdout, cmd.Stderr = &said, &said
	if err := cmd.Start(); err != nil {
		t.Fatal(err)
	}
	for range 500 {
		if _, err := os.Stat(begun); err == nil {
			break
		}
		time.Sleep(20 * time.Millisecond)
	}
	// A terminal sends it to the whole group.
	if err := syscall.Kill(-cmd.Process.Pid, syscall.SIGINT); err != nil {
		t.Fatal(err)
	}
	err := cmd.Wait()
	if code := cmd.ProcessState.ExitCode(); code != 130 || !strings.Contains(said.String(), "git homerun: interrupted") {
		t.Errorf("exit status %d, %v: %s", code, err, said.String())
	}
	names, err := os.ReadDir(r.dir)
	if err != nil {
		t.Fatal(err)
	}
	for _, name := range names {
		if n := name.Name(); n != ".git" && n != "plant.hcl" && n != "report" {
			t.Errorf("%s is left", n)
		}
	}
	if text, err := os.ReadFile(filepath.Join(r.dir, "report")); err != nil || string(text) != "of yesterday" {
		t.Errorf("the report is %q, %v", text, err)
	}
}
