package cli_test

import (
	"context"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
	"time"

	"homerun/cmd/internal/cli"
	"homerun/schema/plant/planttest"
)

// BenchmarkOrderOfOneFile and BenchmarkColdLint are to be compared: an order
// between two commits that differ in one file of a plant of 20,000 runs may take
// at most half as long again as the lint of that plant.
func BenchmarkOrderOfOneFile(b *testing.B) {
	dir := largeRepository(b)
	for b.Loop() {
		perform(b, dir, "order", "--format", "json", "HEAD~1..HEAD")
	}
}

func BenchmarkColdLint(b *testing.B) {
	dir := largeRepository(b)
	for b.Loop() {
		perform(b, dir, "lint", "--format", "json", "--at", "HEAD")
	}
}

// BenchmarkOrderOfRuns shows that the cost of an order grows with the number of
// runs that change, the judging of the site between the steps included.
func BenchmarkOrderOfRuns(b *testing.B) {
	for _, n := range []int{1000, 10000} {
		b.Run(strconv.Itoa(n), func(b *testing.B) {
			dir := changedRepository(b, n, n)
			for b.Loop() {
				perform(b, dir, "order", "--format", "json", "HEAD~1..HEAD")
			}
		})
	}
}

func perform(b *testing.B, dir string, args ...string) {
	b.Helper()
	status := cli.Main(context.Background(), args, cli.Process{
		In: strings.NewReader(""), Out: io.Discard, Err: os.Stderr, Env: os.Environ(),
		Dir: func() (string, error) { return dir, nil }, Program: os.Executable,
		Now: func() time.Time { return time.Date(2026, 3, 2, 0, 0, 0, 0, time.UTC) },
	})
	if status > 1 {
		b.Fatalf("%v: status %d", args, status)
	}
}

// largeRepository commits a generated plant, and then the same with one file
// edited: ten runs of it are longer.
func largeRepository(b *testing.B) string {
	b.Helper()
	return changedRepository(b, 10, 10)
}

// changedRepository edits so many runs, no more than most in one file.
func changedRepository(b *testing.B, runs, most int) string {
	b.Helper()
	dir := b.TempDir()
	files := planttest.Generate(planttest.Options{Runs: 20000, Files: 60, Seed: 1})
	for _, f := range files {
		put(b, filepath.Join(dir, f.Path), f.Text)
	}
	git := func(args ...string) {
		cmd := exec.CommandContext(b.Context(), "git", append([]string{"-C", dir, "-c", "user.name=Keeper", "-c", "user.email=keeper@pier.example"}, args...)...)
		if out, err := cmd.CombinedOutput(); err != nil {
			b.Fatalf("git %v: %v\n%s", args, err, out)
		}
	}
	git("init", "-q")
	git("add", ".")
	git("commit", "-qm", "as surveyed")
	for _, f := range files {
		if !strings.Contains(f.Text, "run \"") || runs == 0 {
			continue
		}
		n := min(most, runs, strings.Count(f.Text, "length = \""))
		put(b, filepath.Join(dir, f.Path), strings.Replace(f.Text, "length = \"", "length = \"1", n))
		runs -= n
	}
	if runs > 0 {
		b.Fatalf("%d runs were left to change", runs)
	}
	git("commit", "-qam", "longer cables")
	return dir
}

func put(b *testing.B, path, text string) {
	b.Helper()
	if err := os.MkdirAll(filepath.Dir(path), 0o777); err != nil {
		b.Fatal(err)
	}
	if err := os.WriteFile(path, []byte(text), 0o600); err != nil {
		b.Fatal(err)
	}
}
