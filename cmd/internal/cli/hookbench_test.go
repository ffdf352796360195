//go:build unix

package cli_test

import (
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
	"time"
)

// A cost is what a program took, with all that it started.
type cost struct{ wall, work time.Duration }

func (b *bench) run(name string, args ...string) cost {
	b.Helper()
	cmd := exec.CommandContext(b.Context(), name, args...)
	cmd.Dir, cmd.Env = b.dir, b.env
	begun := time.Now()
	out, err := cmd.CombinedOutput()
	wall := time.Since(begun)
	if err != nil {
		b.Fatalf("%s %v: %v\n%s", name, args, err, out)
	}
	used := cmd.ProcessState.SysUsage().(*syscall.Rusage)
	return cost{wall, time.Duration(used.Utime.Nano() + used.Stime.Nano())}
}

// A bench is a repository with a generated plant, one that is edited again and again.
type bench struct {
	*testing.B
	dir, file, text string
	env             []string
	edits           int
}

// commit stages one file with another note and commits it.
func (b *bench) commit(how ...string) cost {
	b.Helper()
	b.edits++
	put(b.B, b.file, strings.Replace(b.text, "\n}\n", fmt.Sprintf("\n  note = \"edited %d times\"\n}\n", b.edits), 1))
	b.run("git", "add", "-A")
	return b.run("git", append([]string{"commit", "-q", "-m", "another note"}, how...)...)
}

func newBench(b *testing.B) *bench {
	b.Helper()
	dir := largeRepository(b)
	files, err := filepath.Glob(filepath.Join(dir, "runs", "*.hcl"))
	if err != nil || len(files) == 0 {
		b.Fatal(len(files), err)
	}
	text, err := os.ReadFile(files[0])
	if err != nil {
		b.Fatal(err)
	}
	return &bench{B: b, dir: dir, file: files[0], text: string(text), env: programs(b)}
}

// programs builds the program, and gives the environment in which it and a bare parse are found.
func programs(b *testing.B) []string {
	b.Helper()
	folder := b.TempDir()
	self, err := os.Executable()
	if err != nil {
		b.Fatal(err)
	}
	if err = os.Symlink(self, filepath.Join(folder, "bare-parse")); err != nil {
		b.Fatal(err)
	}
	if out, buildErr := exec.CommandContext(b.Context(), "go", "build", "-o", folder, "homerun/cmd/git-homerun").CombinedOutput(); buildErr != nil {
		b.Fatalf("%v: %s", buildErr, out)
	}
	return append(os.Environ(), "PATH="+folder+":"+os.Getenv("PATH"),
		"GIT_AUTHOR_NAME=Keeper", "GIT_AUTHOR_EMAIL=keeper@pier.example", "GIT_COMMITTER_NAME=Keeper", "GIT_COMMITTER_EMAIL=keeper@pier.example")
}

// A least is the least cost of each of several programs that take turns.
type least map[string]cost

func (l least) note(what string, c cost) {
	if was, seen := l[what]; seen {
		c = cost{min(c.wall, was.wall), min(c.work, was.work)}
	}
	l[what] = c
}

// ratio reports what one took as a part of what another took, by the clock and by the processors.
func (l least) ratio(b *testing.B, a, of string) {
	b.Helper()
	b.ReportMetric(float64(l[a].wall)/float64(l[of].wall), a+"/"+of)
	b.ReportMetric(float64(l[a].work)/float64(l[of].work), a+"-work/"+of+"-work")
}

// BenchmarkCommit is what the hook adds to "git commit" of one staged file in a plant of 20,000 runs in sixty files, as
// a part of what a bare parse of the plant takes: whole processes, in turns, the least of each. "hook/parse" is by the
// clock, "hook-work/parse-work" by the processors' time, which other work on the machine hardly touches.
func BenchmarkCommit(b *testing.B) {
	r := newBench(b)
	r.run("git-homerun", "hook", "install")
	all := make(least)
	for b.Loop() {
		all.note("with", r.commit())
		all.note("without", r.commit("--no-verify"))
		all.note("parse", r.run("bare-parse"))
	}
	with, without, parse := all["with"], all["without"], all["parse"]
	b.Logf("least: with the hook %v, without %v, bare parse %v", with, without, parse)
	b.ReportMetric(float64(with.wall-without.wall)/float64(parse.wall), "hook/parse")
	b.ReportMetric(float64(with.work-without.work)/float64(parse.work), "hook-work/parse-work")
}
