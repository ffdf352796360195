package vcs_test

import (
	"fmt"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"homerun/schema/vcs"
)

// big makes a repository of 60 files and 3.5 MB in a folder, the size of a plant of 20,000 runs.
func big(b *testing.B, packed string) string {
	b.Helper()
	dir := b.TempDir()
	random := rand.New(rand.NewPCG(1, 1))
	git := func(args ...string) {
		cmd := exec.CommandContext(b.Context(), "git", args...)
		cmd.Dir = dir
		if out, err := cmd.CombinedOutput(); err != nil {
			b.Fatalf("git %v: %v\n%s", args, err, out)
		}
	}
	git("init", "-q")
	for i := range 60 {
		var text strings.Builder
		for text.Len() < 3_500_000/60 {
			fmt.Fprintf(&text, "run \"A%05d\" {\n  from = \"R%02d:%02d\"\n  length = \"%d.%d m\"\n}\n",
				random.IntN(1e5), random.IntN(30), random.IntN(48), random.IntN(90), random.IntN(10))
		}
		if err := os.WriteFile(filepath.Join(dir, fmt.Sprintf("%02d.hcl", i)), []byte(text.String()), 0o644); err != nil {
			b.Fatal(err)
		}
	}
	git("add", ".")
	git("-c", "user.name=a", "-c", "user.email=a@example.org", "commit", "-qm", "All runs")
	if packed == "packed" {
		git("gc", "-q")
	}
	return dir
}

// BenchmarkStaged is what a hook waits for: opening the repository, both sides of the comparison, all contents.
func BenchmarkStaged(b *testing.B) {
	for _, storage := range []string{"loose", "packed"} {
		dir := big(b, storage)
		for _, reader := range []vcs.Reader{vcs.ReaderAuto, vcs.ReaderGoGit, vcs.ReaderGit} {
			b.Run(storage+"/"+reader.String(), func(b *testing.B) {
				for b.Loop() {
					b.SetBytes(readStaged(b, dir, reader))
				}
			})
		}
	}
}

// readStaged reads HEAD, the index and every blob of the index, and gives the number of bytes.
func readStaged(b *testing.B, dir string, reader vcs.Reader) (total int64) {
	b.Helper()
	r, err := vcs.Open(b.Context(), vcs.Options{Dir: dir, Env: os.Environ(), Reader: reader})
	if err != nil {
		b.Fatal(err)
	}
	defer r.Close()
	head, err := r.Resolve(b.Context(), "HEAD")
	if err != nil {
		b.Fatal(err)
	}
	if _, err = r.Tree(b.Context(), head.ID); err != nil {
		b.Fatal(err)
	}
	entries, err := r.Index(b.Context())
	if err != nil {
		b.Fatal(err)
	}
	var ids []string
	for _, e := range entries {
		ids = append(ids, e.ID)
	}
	for blob, err := range r.Blobs(b.Context(), ids) {
		if err != nil {
			b.Fatal(err)
		}
		total += int64(len(blob.Data))
	}
	return total
}

// BenchmarkOpen is opening alone, most of it git's one answer.
func BenchmarkOpen(b *testing.B) {
	dir := big(b, "loose")
	for b.Loop() {
		r, err := vcs.Open(b.Context(), vcs.Options{Dir: dir, Env: os.Environ()})
		if err != nil {
			b.Fatal(err)
		}
		r.Close()
	}
}

// BenchmarkLog walks 3,000 commits over 2,000 files with their changes, each commit editing three files.
func BenchmarkLog(b *testing.B) {
	dir := b.TempDir()
	var text strings.Builder
	for at := range 3000 {
		fmt.Fprintf(&text, "commit refs/heads/main\ncommitter A <a@example.org> %d +0000\ndata 6\nchange\n", 1_500_000_000+at)
		for i := range max(3, 2000*(1-min(at, 1))) {
			fmt.Fprintf(&text, "M 100644 inline %d/%d.hcl\ndata 8\n%08d\n", (at*7+i)%40, (at*7+i)%2000, at)
		}
	}
	for _, args := range [][]string{{"init", "-q", "-b", "main"}, {"fast-import", "--quiet"}} {
		cmd := exec.CommandContext(b.Context(), "git", args...)
		cmd.Dir, cmd.Stdin = dir, strings.NewReader(text.String())
		if out, err := cmd.CombinedOutput(); err != nil {
			b.Fatalf("git %v: %v\n%s", args, err, out)
		}
	}
	r, err := vcs.Open(b.Context(), vcs.Options{Dir: dir, Env: os.Environ()})
	if err != nil {
		b.Fatal(err)
	}
	defer r.Close()
	for name, o := range map[string]vcs.LogOptions{
		"commits": {}, "changes": {Changes: true}, "path": {Changes: true, Paths: []string{"7/7.hcl"}},
	} {
		b.Run(name, func(b *testing.B) {
			for b.Loop() {
				count := 0
				for _, err := range r.Log(b.Context(), o) {
					if err != nil {
						b.Fatal(err)
					}
					count++
				}
				b.ReportMetric(float64(count), "commits")
			}
		})
	}
}
