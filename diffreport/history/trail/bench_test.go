package trail_test

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"homerun/diffreport/history"
	"homerun/diffreport/history/trail"
	"homerun/schema"
	"homerun/schema/plant/planttest"
	"homerun/schema/vcs"
)

// BenchmarkLife compares, in one history of 3,000 commits over 20,000 runs, the
// first look at a label and a second one with git log -L, which is told the file.
func BenchmarkLife(b *testing.B) {
	for _, size := range []struct {
		name  string
		files int
	}{{"sixty", 60}, {"2000", 2000}} {
		b.Run(size.name, func(b *testing.B) {
			p := makePast(b, planttest.PastOptions{Runs: 20000, Files: size.files, Commits: 3000, Seed: 1})
			git(b, p.dir, nil, "repack", "-adfq")
			git(b, p.dir, nil, "commit-graph", "write")
			git(b, p.dir, nil, "reset", "-q", "--hard")
			label, file := p.oldest(b)
			b.Run("lines", func(b *testing.B) {
				for b.Loop() {
					git(b, p.dir, nil, "log", "-L", `/run "`+label+`"/,/^ *}/:`+file)
				}
			})
			folder := filepath.Join(b.TempDir(), "kept")
			b.Run("first", func(b *testing.B) {
				for b.Loop() {
					if err := os.RemoveAll(folder); err != nil {
						b.Fatal(err)
					}
					p.look(b, folder, label)
				}
			})
			b.Run("second", func(b *testing.B) {
				for b.Loop() {
					p.look(b, folder, label)
				}
			})
		})
	}
}

// oldest finds a run that has been there from the beginning, and its file.
func (p *past) oldest(b *testing.B) (label, file string) {
	b.Helper()
	for _, label := range p.truth.Labels {
		for _, folder := range []string{"runs", "moved"} {
			files, _ := filepath.Glob(filepath.Join(p.dir, folder, "*.hcl"))
			for _, name := range files {
				if text, err := os.ReadFile(name); err == nil && strings.Contains(string(text), `run "`+label+`"`) {
					return label, folder + "/" + filepath.Base(name)
				}
			}
		}
	}
	b.Fatal("there is no run")
	return "", ""
}

func (p *past) look(b *testing.B, folder, label string) {
	b.Helper()
	repo, err := vcs.Open(b.Context(), vcs.Options{Dir: p.dir, Env: os.Environ()})
	if err != nil {
		b.Fatal(err)
	}
	defer func() { _ = repo.Close() }()
	head, err := repo.Resolve(b.Context(), "HEAD")
	if err != nil {
		b.Fatal(err)
	}
	t, err := trail.Open(b.Context(), trail.Options{Repo: repo, Reader: schema.NewReader(), From: head.ID, Plant: "generated", Dir: ".", Folder: folder})
	if err != nil {
		b.Fatal(err)
	}
	h, err := history.Of(history.Asked{Label: label}, t.Steps())
	if err != nil || len(h.Events) == 0 {
		b.Fatalf("%d events, %v", len(h.Events), err)
	}
}
