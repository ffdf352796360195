//go:build unix

package cli_test

import (
	"bytes"
	"os"
	"path/filepath"
	"testing"

	"homerun/schema/plant/planttest"
)

// BenchmarkAudit compares an audit of 3,000 commits over 20,000 runs, the first one and the one that has what the
// first kept, with "git log -p" over the same commits: whole processes, in turns, the least of each.
func BenchmarkAudit(b *testing.B) {
	for _, size := range []struct {
		name  string
		files int
	}{{"sixty", 60}, {"2000", 2000}} {
		b.Run(size.name, func(b *testing.B) {
			r := &bench{B: b, dir: b.TempDir(), env: programs(b)}
			r.past(planttest.PastOptions{Runs: 20000, Files: size.files, Commits: 3000, Seed: 1})
			all := make(least)
			for b.Loop() {
				if err := os.RemoveAll(filepath.Join(r.dir, ".git", "homerun")); err != nil {
					b.Fatal(err)
				}
				all.note("log", r.run("git", "log", "-p"))
				all.note("first", r.run("git-homerun", "audit"))
				all.note("second", r.run("git-homerun", "audit"))
			}
			all.ratio(b, "first", "log")
			all.ratio(b, "second", "first")
		})
	}
}

// past makes a repository of a made-up history, packed.
func (b *bench) past(o planttest.PastOptions) {
	b.Helper()
	var stream bytes.Buffer
	if _, err := planttest.Past(&stream, o); err != nil {
		b.Fatal(err)
	}
	b.run("git", "init", "-q", "-b", "main")
	fastImport(b, b.dir, b.env, &stream)
	b.run("git", "repack", "-adfq")
	b.run("git", "commit-graph", "write")
	b.run("git", "reset", "-q", "--hard")
}
