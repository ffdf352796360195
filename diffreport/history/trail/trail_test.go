package trail_test

import (
	"bytes"
	"context"
	"crypto/sha256"
	"fmt"
	"iter"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"homerun/diffreport/history"
	"homerun/diffreport/history/trail"
	"homerun/schema"
	"homerun/schema/plant"
	"homerun/schema/plant/planttest"
	"homerun/schema/vcs"
)

// A past is a made-up history in a repository, with what is known about it.
type past struct {
	dir   string
	truth planttest.Truth
	// number is that of a commit by its id.
	number map[string]int
	repo   *vcs.Repo
}

func git(tb testing.TB, dir string, in []byte, args ...string) {
	tb.Helper()
	cmd := exec.CommandContext(tb.Context(), "git", args...)
	cmd.Dir = dir
	cmd.Env = append(os.Environ(), "HOME="+dir, "XDG_CONFIG_HOME="+dir, "GIT_CONFIG_NOSYSTEM=1", "LC_ALL=C")
	cmd.Stdin = bytes.NewReader(in)
	out, err := cmd.CombinedOutput()
	if err != nil {
		tb.Fatalf("git %v: %v\n%s", args, err, out)
	}
}

func makePast(tb testing.TB, o planttest.PastOptions) *past {
	tb.Helper()
	p := &past{dir: tb.TempDir(), number: make(map[string]int)}
	var stream bytes.Buffer
	var err error
	if p.truth, err = planttest.Past(&stream, o); err != nil {
		tb.Fatal(err)
	}
	git(tb, p.dir, nil, "init", "-q", "-b", "main")
	marks := filepath.Join(p.dir, ".git", "marks")
	git(tb, p.dir, stream.Bytes(), "fast-import", "--quiet", "--export-marks="+marks)
	text, err := os.ReadFile(marks)
	if err != nil {
		tb.Fatal(err)
	}
	for line := range strings.Lines(string(text)) {
		var n int
		var id string
		if _, err := fmt.Sscanf(line, ":%d %s", &n, &id); err != nil {
			tb.Fatal(err)
		}
		p.number[id] = n
	}
	p.open(tb)
	return p
}

func (p *past) open(tb testing.TB) {
	tb.Helper()
	var err error
	if p.repo, err = vcs.Open(tb.Context(), vcs.Options{Dir: p.dir, Env: os.Environ()}); err != nil {
		tb.Fatal(err)
	}
	tb.Cleanup(func() { _ = p.repo.Close() })
}

func (p *past) trail(tb testing.TB) *trail.Trail {
	tb.Helper()
	head, err := p.repo.Resolve(tb.Context(), "HEAD")
	if err != nil {
		tb.Fatal(err)
	}
	t, err := trail.Open(tb.Context(), trail.Options{Repo: p.repo, Reader: schema.NewReader(), From: head.ID, Plant: "generated", Dir: "."})
	if err != nil {
		tb.Fatal(err)
	}
	return t
}

// told is what was done to the bearers of a label up to the day on which they
// gave it up for the last time, as the truth knows it.
func (p *past) told(label string) (deeds []string, things int) {
	last := make(map[int]int)
	for i, d := range p.truth.Deeds {
		if d.Gone == label || d.Bears == label {
			last[d.Thing] = i
		}
	}
	for i, d := range p.truth.Deeds {
		if until, bore := last[d.Thing]; bore && i <= until {
			deeds = append(deeds, fmt.Sprintf("%04d %s", d.Commit, d.Class))
		}
	}
	slices.Sort(deeds)
	return deeds, len(last)
}

func TestEveryEventOfALongHistoryIsFoundAndNoneInvented(t *testing.T) {
	t.Parallel()
	if testing.Short() {
		t.Skip("the long history is left to the full run")
	}
	for _, packed := range []bool{false, true} {
		o := planttest.PastOptions{Runs: 240, Files: 14, Commits: 3000, Seed: 7}
		if packed {
			o = planttest.PastOptions{Runs: 120, Files: 5, Commits: 600, Seed: 8}
		}
		p := makePast(t, o)
		if packed {
			git(t, p.dir, nil, "repack", "-adfq", "--depth=50")
			p.open(t)
		}
		if len(p.truth.Merges) < o.Commits/50 {
			t.Fatalf("only %d merges", len(p.truth.Merges))
		}
		tr := p.trail(t)
		wrong := 0
		labels := p.truth.Labels
		if len(labels) > 24 {
			// Neighbours are alike; a step that divides no panel meets all sorts.
			labels = nil
			for i := 0; i < len(p.truth.Labels); i += 1 + len(p.truth.Labels)/24 {
				labels = append(labels, p.truth.Labels[i])
			}
		}
		for _, label := range labels {
			h, err := history.Of(history.Asked{Label: label}, tr.Steps())
			if err != nil {
				t.Fatal(err)
			}
			var got []string
			for _, e := range h.Events {
				got = append(got, fmt.Sprintf("%04d %s", p.number[e.ID], e.Class))
			}
			slices.Sort(got)
			want, things := p.told(label)
			if diff := cmp.Diff(want, got); diff != "" {
				t.Errorf("%s: what was done, and what is told:\n%s", label, diff)
				wrong++
			}
			if h.Lives != things {
				t.Errorf("%s: %d things bore it, %d are told", label, things, h.Lives)
				wrong++
			}
			if wrong > 5 {
				t.FailNow()
			}
		}
	}
}

// whole walks a history with whole plants at every commit, as git lists them.
func (p *past) whole(ctx context.Context, reader *schema.Reader, wholes map[string]*plant.Plant) iter.Seq2[history.Step, error] {
	build := func(commit string) (*plant.Plant, error) {
		if known, ok := wholes[commit]; ok {
			return known, nil
		}
		entries, err := p.repo.Tree(ctx, commit)
		if err != nil {
			return nil, err
		}
		var paths []string
		ids := make(map[string]string)
		for _, e := range entries {
			if schema.IsRecords(e.Path) && e.Regular() {
				paths, ids[e.Path] = append(paths, e.Path), e.ID
			}
		}
		folders, _ := schema.Folders(paths)
		var found *plant.Plant
		for _, folder := range folders {
			var files []*schema.File
			for _, name := range folder.Files {
				text, err := p.repo.Blob(ctx, ids[name])
				if err != nil {
					return nil, err
				}
				files = append(files, reader.ReadFile(name, string(text)))
			}
			one := plant.Build(folder.Dir, files)
			if one.Name() == "generated" && (found == nil || found.Name() != "generated") || found == nil && folder.Dir == "." {
				found = one
			}
		}
		wholes[commit] = found
		return found, nil
	}
	return func(yield func(history.Step, error) bool) {
		for c, err := range p.repo.Log(ctx, vcs.LogOptions{From: "HEAD"}) {
			step := history.Step{Revision: history.Revision{ID: c.ID}}
			if err == nil {
				step.Plant, err = build(c.ID)
			}
			for _, id := range c.Parents {
				if err == nil {
					var before *plant.Plant
					before, err = build(id)
					step.Parents = append(step.Parents, history.Parent{ID: id, Plant: before})
				}
			}
			if !yield(step, err) || err != nil {
				return
			}
		}
	}
}

// lines writes a history out in full.
func lines(h history.History) []string {
	out := []string{fmt.Sprintf("%s %s, %d lives", h.Kind, h.Record, h.Lives)}
	for _, e := range h.Events {
		text := fmt.Sprintf("%s %s %s %s %s %q %q %q life %d via %q merge %v whole %v: %s; %s; %s", e.ID, e.Class, e.Part, e.Kind, e.Label, e.Former, e.Place, e.End, e.Life, e.Via, e.Merge, e.Whole, e.Summary, e.Why, e.Meaning)
		for _, f := range e.Fields {
			text += fmt.Sprintf("; %s %s %s %s", f.Name, f.Before, f.After, f.Meaning)
		}
		out = append(out, text)
	}
	return out
}

// sameAsWhole holds the trail equal to whole plants, for every label that the
// records of the newest commit and the truth know.
func (p *past) sameAsWhole(t *testing.T, labels []string) {
	t.Helper()
	asked := make([]history.Asked, len(labels))
	for i, label := range labels {
		asked[i].Label = label
	}
	p.asWhole(t, asked)
}

// asWhole returns how many events were compared.
func (p *past) asWhole(t *testing.T, all []history.Asked) (events int) {
	t.Helper()
	tr := p.trail(t)
	reader, wholes := schema.NewReader(), make(map[string]*plant.Plant)
	for _, asked := range all {
		want, err := history.Of(asked, p.whole(t.Context(), reader, wholes))
		if err != nil {
			t.Fatal(err)
		}
		got, err := history.Of(asked, tr.Steps())
		if err != nil {
			t.Fatal(err)
		}
		if diff := cmp.Diff(lines(want), lines(got)); diff != "" {
			t.Fatalf("%+v: with whole plants, and on the trail:\n%s", asked, diff)
		}
		events += len(got.Events)
	}
	return events
}

func TestPortsAndSpacesOnTheTrailAreAsInWholePlants(t *testing.T) {
	t.Parallel()
	for seed := range uint64(2) {
		if testing.Short() && seed > 0 {
			continue
		}
		p := makePast(t, planttest.PastOptions{Runs: 72, Files: 4 + int(seed), Commits: 70, Seed: 40 + seed})
		asked := []history.Asked{{Label: "1A", Contents: true}, {Label: "1-HALL", Contents: true}, {Label: "nothing", Port: 1}}
		for _, label := range p.truth.Labels {
			if strings.Count(label, "-") == 1 && !strings.Contains(label, ".") && len(label) < 8 {
				asked = append(asked, history.Asked{Label: label, Port: 1}, history.Asked{Label: label, Port: 5})
			}
		}
		for port := range int64(6) {
			asked = append(asked, history.Asked{Label: "1A-SW1", Port: 4*port + 1}, history.Asked{Label: "1.A01", Port: 1 + port%2})
		}
		if events := p.asWhole(t, asked); events < 40 {
			t.Errorf("only %d events tell nothing", events)
		}
	}
}

func TestTheTrailTellsWhatWholePlantsTell(t *testing.T) {
	t.Parallel()
	o := planttest.PastOptions{Runs: 72, Files: 7, Commits: 250, Seed: 4}
	if testing.Short() {
		o.Commits = 60
	}
	p := makePast(t, o)
	labels := slices.Concat(p.truth.Labels, []string{"1.A01", "B-1.A", "T-2", "1A", "c6a-cmp", "c6a-new", "1A-SW1", "1-T-01", "generated", "nothing"})
	p.sameAsWhole(t, labels)
	// The same once more from a pack that git has made small.
	git(t, p.dir, nil, "repack", "-adfq")
	p.open(t)
	p.sameAsWhole(t, labels[:20])
}

// openKept opens a trail that keeps its register in a folder.
func (p *past) openKept(tb testing.TB, folder string) *trail.Trail {
	tb.Helper()
	head, err := p.repo.Resolve(tb.Context(), "HEAD")
	if err != nil {
		tb.Fatal(err)
	}
	t, err := trail.Open(tb.Context(), trail.Options{Repo: p.repo, Reader: schema.NewReader(), From: head.ID, Plant: "generated", Dir: ".", Folder: folder})
	if err != nil {
		tb.Fatal(err)
	}
	return t
}

func (p *past) life(tb testing.TB, t *trail.Trail, label string) []string {
	tb.Helper()
	h, err := history.Of(history.Asked{Label: label}, t.Steps())
	if err != nil {
		tb.Fatal(err)
	}
	return lines(h)
}

func TestARegisterThatIsKeptAndOneThatIsDamaged(t *testing.T) {
	t.Parallel()
	p := makePast(t, planttest.PastOptions{Runs: 48, Files: 5, Commits: 80, Seed: 6})
	folder := filepath.Join(t.TempDir(), "kept")
	label := "1A-A02"
	want := p.life(t, p.trail(t), label)
	if got := p.life(t, p.openKept(t, folder), label); !slices.Equal(got, want) {
		t.Fatalf("got %v, want %v", got, want)
	}
	files, err := os.ReadDir(folder)
	if err != nil || len(files) != 1 {
		t.Fatalf("one file is kept: %v %v", files, err)
	}
	name := filepath.Join(folder, files[0].Name())
	good, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	check := func(what string, data []byte) {
		if err := os.WriteFile(name, data, 0o600); err != nil {
			t.Fatal(err)
		}
		if got := p.life(t, p.openKept(t, folder), label); !slices.Equal(got, want) {
			t.Errorf("%s: got %v, want %v", what, got, want)
		}
	}
	check("as it was kept", good)
	check("empty", nil)
	check("cut short", good[:len(good)/2])
	for at := 0; at < len(good); at += 1 + len(good)/12 {
		bad := slices.Clone(good)
		bad[at] ^= 0x40
		check(fmt.Sprintf("byte %d is another", at), bad)
	}
}

// TestARegisterOfLies changes a register and writes the digest that fits: what
// it says may then be wrong, but reading it ends without a panic.
func TestARegisterOfLies(t *testing.T) {
	t.Parallel()
	p := makePast(t, planttest.PastOptions{Runs: 24, Files: 2, Commits: 12, Seed: 6})
	folder := t.TempDir()
	p.openKept(t, folder)
	files, err := os.ReadDir(folder)
	if err != nil || len(files) != 1 {
		t.Fatalf("one file is kept: %v %v", files, err)
	}
	name := filepath.Join(folder, files[0].Name())
	good, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	body := good[:len(good)-sha256.Size]
	for at := 90; at < len(body); at += 1 + len(body)/60 {
		bad := slices.Clone(body)
		bad[at] ^= byte(1 + at%255)
		sum := sha256.Sum256(bad)
		if err := os.WriteFile(name, append(bad, sum[:]...), 0o600); err != nil {
			t.Fatal(err)
		}
		head, err := p.repo.Resolve(t.Context(), "HEAD")
		if err != nil {
			t.Fatal(err)
		}
		tr, err := trail.Open(t.Context(), trail.Options{Repo: p.repo, Reader: schema.NewReader(), From: head.ID, Plant: "generated", Dir: ".", Folder: folder})
		if err != nil {
			continue // it names what is not there
		}
		for range tr.Steps() {
			continue
		}
		_, _ = history.Of(history.Asked{Label: "1A-A02"}, tr.Steps())
	}
}

// TestALookAtMoreThanWasKept adds commits behind a register's back.
func TestALookAtMoreThanWasKept(t *testing.T) {
	t.Parallel()
	p := makePast(t, planttest.PastOptions{Runs: 48, Files: 5, Commits: 120, Seed: 9})
	folder := t.TempDir()
	for _, back := range []int{90, 60, 59, 30, 0} {
		head, err := p.repo.Resolve(t.Context(), fmt.Sprintf("HEAD~%d", back/2))
		if err != nil {
			t.Fatal(err)
		}
		o := trail.Options{Repo: p.repo, Reader: schema.NewReader(), From: head.ID, Plant: "generated", Dir: ".", Folder: folder}
		kept, err := trail.Open(t.Context(), o)
		if err != nil {
			t.Fatal(err)
		}
		o.Folder = ""
		fresh, err := trail.Open(t.Context(), o)
		if err != nil {
			t.Fatal(err)
		}
		for _, label := range p.truth.Labels[:12] {
			if diff := cmp.Diff(p.life(t, fresh, label), p.life(t, kept, label)); diff != "" {
				t.Errorf("HEAD~%d, %s: read anew, and with what was kept:\n%s", back/2, label, diff)
			}
		}
	}
}
