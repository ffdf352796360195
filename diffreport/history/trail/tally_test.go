package trail_test

import (
	"maps"
	"math/rand/v2"
	"os"
	"slices"
	"strings"
	"testing"

	"homerun/diffreport/history"
	"homerun/diffreport/history/trail"
	"homerun/schema"
	"homerun/schema/plant/planttest"
	"homerun/schema/vcs"
)

// TestTokensFollowEdits holds what stands in a text by its edits, made anywhere in
// its lines, to what stands in it by itself.
func TestTokensFollowEdits(t *testing.T) {
	t.Parallel()
	pieces := []string{
		"run \"A", "\" {", "\n", "\n", "  from = \"P:1\"", "\"", "{", "}", " ", "/* ", "# x", "\\u0041", "\u212a", "panel P {", "\r\n", "\"1A\"",
	}
	random := rand.New(rand.NewPCG(1, 2))
	some := func(n int) string {
		var b strings.Builder
		for range random.IntN(n + 1) {
			b.WriteString(pieces[random.IntN(len(pieces))])
		}
		return b.String()
	}
	for range 20000 {
		was := some(40)
		var is strings.Builder
		var edits []vcs.Edit
		at := 0
		for at < len(was) && random.IntN(5) > 0 {
			from := at + random.IntN(len(was)-at)
			to := from + random.IntN(len(was)-from+1)
			is.WriteString(was[at:from])
			start := is.Len()
			is.WriteString(some(4))
			edits = append(edits, vcs.Edit{From: from, To: to, Start: start, End: is.Len()})
			at = to
		}
		is.WriteString(was[at:])
		first := vcs.Version{Base: -1, Text: []byte(was)}
		got := trail.Held([]vcs.Version{first, {N: 1, Was: []byte(was), Text: []byte(is.String()), Edits: edits}})
		want := trail.Held([]vcs.Version{{Base: -1, Text: []byte(is.String())}})
		if !maps.Equal(got, want) {
			t.Fatalf("%q became %q by %v: got %v, want %v", was, is.String(), edits, got, want)
		}
	}
}

// TestTheTrailIsTheSameThroughGit reads a history from its packs and through git,
// with and without a register that the other way has made.
func TestTheTrailIsTheSameThroughGit(t *testing.T) {
	t.Parallel()
	p := makePast(t, planttest.PastOptions{Runs: 48, Files: 6, Commits: 100, Seed: 21})
	git(t, p.dir, nil, "repack", "-adfq")
	var told [][]string
	folders := []string{t.TempDir(), t.TempDir()}
	for _, way := range []struct {
		reader vcs.Reader
		folder string
	}{{vcs.ReaderAuto, folders[0]}, {vcs.ReaderGit, folders[1]}, {vcs.ReaderAuto, folders[1]}, {vcs.ReaderGit, folders[0]}} {
		repo, err := vcs.Open(t.Context(), vcs.Options{Dir: p.dir, Env: os.Environ(), Reader: way.reader})
		if err != nil {
			t.Fatal(err)
		}
		head, err := repo.Resolve(t.Context(), "HEAD")
		if err != nil {
			t.Fatal(err)
		}
		tr, err := trail.Open(t.Context(), trail.Options{Repo: repo, Reader: schema.NewReader(), From: head.ID, Plant: "generated", Dir: ".", Folder: way.folder})
		if err != nil {
			t.Fatal(err)
		}
		var all []string
		for _, label := range p.truth.Labels {
			h, err := history.Of(history.Asked{Label: label}, tr.Steps())
			if err != nil {
				t.Fatal(err)
			}
			all = append(all, lines(h)...)
		}
		told = append(told, all)
		if err := repo.Close(); err != nil {
			t.Error(err)
		}
	}
	for i, all := range told {
		if len(all) < 100 || !slices.Equal(all, told[0]) {
			t.Errorf("way %d tells %d lines, the first %d", i, len(all), len(told[0]))
		}
	}
}
