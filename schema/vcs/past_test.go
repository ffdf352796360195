package vcs_test

import (
	"bytes"
	"context"
	"encoding/hex"
	"fmt"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"sync"
	"testing"

	"github.com/google/go-cmp/cmp"

	"homerun/schema/vcs"
)

// checkPast holds what is told of a whole history to what git tells, commit by commit and content by content.
func (r *repo) checkPast(opened *vcs.Repo, head string) {
	r.t.Helper()
	ctx := r.t.Context()
	ids, err := opened.Ancestry(ctx, head)
	check(r.t, err)
	want, err := opened.Commits(ctx, ids)
	check(r.t, err)
	got, err := opened.Changes(ctx, ids)
	check(r.t, err)
	if diff := cmp.Diff(reduced(want), reduced(got)); diff != "" {
		r.t.Errorf("changes (-git +got):\n%s", diff)
	}
	r.checkVersions(want, func(o vcs.Reading) error { return opened.Versions(ctx, o) })
}

// reduced leaves of commits what Changes fills in.
func reduced(commits []vcs.Commit) []vcs.Commit {
	var all []vcs.Commit
	for _, c := range commits {
		all = append(all, vcs.Commit{ID: c.ID, Tree: c.Tree, Parents: c.Parents, Boundary: c.Boundary, Changed: c.Changed})
	}
	return all
}

// checkVersions reads all contents of a history, and again the later ones alone, and makes each of its base.
func (r *repo) checkVersions(commits []vcs.Commit, read func(vcs.Reading) error) {
	r.t.Helper()
	var o vcs.Reading
	place := map[string]int{}
	for _, c := range slices.Backward(commits) {
		for _, d := range c.Changed {
			if _, again := place[d.After]; again || d.AfterMode == vcs.ModeSubmodule || d.After == "" {
				continue
			}
			place[d.After] = len(o.IDs)
			like := int32(-1)
			if n, known := place[d.Before]; known && n < len(o.IDs) {
				like = int32(n)
			}
			o.IDs, o.Like = append(o.IDs, d.After), append(o.Like, like)
		}
	}
	want := make([]string, len(o.IDs))
	for i, id := range o.IDs {
		want[i] = r.git("cat-file", "blob", id)
	}
	for _, first := range []int{0, len(o.IDs) / 2} {
		o.First = first
		texts := make([]string, len(o.IDs))
		var mu sync.Mutex
		o.Begin = func(int) { clear(texts) }
		o.Take = func(_ int, v *vcs.Version) error {
			mu.Lock()
			defer mu.Unlock()
			texts[v.N] = string(v.Text)
			if v.Base >= 0 && (edited(v.Was, v.Text, v.Edits) != string(v.Text) || string(v.Was) != want[v.Base] || v.Base != int(o.Like[v.N])) {
				r.t.Errorf("%s: %v does not make %q of %q", o.IDs[v.N], v.Edits, v.Text, v.Was)
			}
			return nil
		}
		check(r.t, read(o))
		for i := first; i < len(want); i++ {
			if texts[i] != want[i] {
				r.t.Errorf("%s: got %q, want %q", o.IDs[i], texts[i], want[i])
			}
		}
	}
}

// edited carries out edits, taking from is only what they say came.
func edited(was, is []byte, edits []vcs.Edit) string {
	var b strings.Builder
	at, made := 0, 0
	for _, e := range edits {
		if e.From < at || e.To < e.From || e.Start != made+e.From-at {
			return fmt.Sprintf("no edits: %v", edits)
		}
		b.Write(was[at:e.From])
		b.Write(is[e.Start:e.End])
		at, made = e.To, e.End
	}
	b.Write(was[at:])
	return b.String()
}

// wildPast writes a history in which files become folders, links and programs and back, grow, move and come again,
// on lines that are merged, with a parent named twice and commits that change nothing.
func wildPast(seed uint64) []byte {
	random := rand.New(rand.NewPCG(seed, 3))
	names := []string{"a", "a-b", "a.hcl", "a/x.hcl", "a/b/y.hcl", "a/b", "a0", "z/z/z/z.hcl", "\u00e9 \t\"q\".hcl", "plant.hcl"}
	modes := []string{"100644", "100644", "100644", "100755", "120000"}
	var lines []string
	for i := range 400 {
		lines = append(lines, fmt.Sprintf("run \"1A-%c%03d\" { length = \"%d m\" }\n", 'A'+i%7, i, random.IntN(90)))
	}
	texts := map[string]string{}
	var out bytes.Buffer
	for n := 1; n <= 60; n++ {
		for range random.IntN(4) {
			name := names[random.IntN(len(names))]
			for other := range texts {
				if strings.HasPrefix(other, name+"/") || strings.HasPrefix(name, other+"/") {
					delete(texts, other)
				}
			}
			switch random.IntN(6) {
			case 0:
				delete(texts, name)
			case 1: // moved from elsewhere
				texts[name] = texts[names[random.IntN(len(names))]]
			default:
				from, to := random.IntN(200), 200+random.IntN(200)
				kept := slices.Clone(lines[from:to])
				kept[random.IntN(len(kept))] = fmt.Sprintf("changed in %d\n", n)
				if random.IntN(3) == 0 { // the end comes first
					kept = slices.Concat(kept[len(kept)/2:], kept[:len(kept)/2])
				}
				texts[name] = modes[random.IntN(len(modes))] + strings.Join(kept, "")
			}
		}
		fmt.Fprintf(&out, "commit refs/heads/main\nmark :%d\ncommitter Ada Moor <ada@example.org> %d +0000\ndata 5\nwork\n\n", n, 978303600+n)
		if n > 1 {
			fmt.Fprintf(&out, "from :%d\n", max(1, n-1-random.IntN(3)))
			for range random.IntN(3) {
				fmt.Fprintf(&out, "merge :%d\n", 1+random.IntN(n-1))
			}
		}
		out.WriteString("deleteall\n")
		for _, name := range slices.Sorted(func(yield func(string) bool) {
			for name, text := range texts {
				if text != "" && !yield(name) {
					return
				}
			}
		}) {
			mode, text := texts[name][:6], texts[name][6:]
			quoted := strings.NewReplacer("\t", `\t`, `"`, `\"`).Replace(name)
			fmt.Fprintf(&out, "M %s inline \"%s\"\ndata %d\n%s\n", mode, quoted, len(text), text)
		}
		if n%9 == 0 {
			fmt.Fprintf(&out, "M 160000 %s \"module\"\n", someID)
		}
	}
	return out.Bytes()
}

// imported makes a repository of a stream.
func (r *repo) imported(stream []byte) *repo {
	r.t.Helper()
	r.git("init", "-q", "-b", "main")
	cmd := exec.CommandContext(r.t.Context(), "git", "fast-import", "--quiet", "--force")
	cmd.Dir, cmd.Env, cmd.Stdin = r.dir, r.env, bytes.NewReader(stream)
	if out, err := cmd.CombinedOutput(); err != nil {
		r.t.Fatalf("%v\n%s", err, out)
	}
	return r
}

// storages are ways in which the objects of one history may lie.
var storages = []struct {
	name string
	make func(r *repo)
}{
	{"as imported", func(*repo) {}},
	{"one pack", func(r *repo) { r.git("repack", "-adfq", "--depth=50", "--window=20") }},
	{"bases by their ids", func(r *repo) { r.git("-c", "repack.useDeltaBaseOffset=false", "repack", "-adfq") }},
	{"no changes", func(r *repo) { r.git("repack", "-adfq", "--depth=0") }},
	{"loose", loosened},
	{"two packs, the rest loose", func(r *repo) {
		loosened(r)
		for _, rev := range []string{"HEAD~9", "HEAD~4"} {
			list := r.git("rev-list", "--objects", rev)
			cmd := exec.CommandContext(r.t.Context(), "git", "pack-objects", "-q", "--incremental", ".git/objects/pack/pack")
			cmd.Dir, cmd.Env, cmd.Stdin = r.dir, r.env, strings.NewReader(list)
			if out, err := cmd.CombinedOutput(); err != nil {
				r.t.Fatalf("%v\n%s", err, out)
			}
		}
		r.git("prune-packed", "-q")
	}},
}

// loosened gives every object a file of its own.
func loosened(r *repo) {
	packs, _ := filepath.Glob(filepath.Join(r.dir, ".git", "objects", "pack", "*.pack"))
	for _, name := range packs {
		aside := filepath.Join(r.dir, "aside.pack")
		check(r.t, os.Rename(name, aside))
		check(r.t, os.RemoveAll(strings.TrimSuffix(name, ".pack")+".idx"))
		data, err := os.ReadFile(aside)
		check(r.t, err)
		cmd := exec.CommandContext(r.t.Context(), "git", "unpack-objects", "-q")
		cmd.Dir, cmd.Env, cmd.Stdin = r.dir, r.env, bytes.NewReader(data)
		if out, err := cmd.CombinedOutput(); err != nil {
			r.t.Fatalf("%v\n%s", err, out)
		}
		check(r.t, os.Remove(aside))
	}
}

// TestPastIsReadFromPacks holds histories that are read in this process, without git having a say, to git.
func TestPastIsReadFromPacks(t *testing.T) {
	t.Parallel()
	for i, storage := range storages {
		t.Run(storage.name, func(t *testing.T) {
			t.Parallel()
			r := fresh(t).imported(wildPast(uint64(i)))
			storage.make(r)
			opened, ctx := r.open(vcs.ReaderAuto), t.Context()
			ids, err := opened.Ancestry(ctx, r.ask("rev-parse", "HEAD"))
			check(t, err)
			want, err := opened.Commits(ctx, ids)
			check(t, err)
			got, err := vcs.StoredChanges(ctx, opened, ids)
			check(t, err)
			if diff := cmp.Diff(reduced(want), reduced(got)); diff != "" {
				t.Errorf("changes (-git +got):\n%s", diff)
			}
			r.checkVersions(want, func(o vcs.Reading) error { return vcs.StoredVersions(ctx, opened, o) })
			r.checkVersions(want, func(o vcs.Reading) error { return r.open(vcs.ReaderGit).Versions(ctx, o) })
			for _, c := range want[:10] {
				r.checkTree(opened, c)
			}
		})
	}
}

// TestPastOfDamagedPacks spoils a pack and its index: what is told then is what was there, or an error.
func TestPastOfDamagedPacks(t *testing.T) {
	t.Parallel()
	r := fresh(t).imported(wildPast(1))
	r.git("repack", "-adfq")
	ids, err := r.open(vcs.ReaderAuto).Ancestry(t.Context(), r.ask("rev-parse", "HEAD"))
	check(t, err)
	want, err := r.open(vcs.ReaderAuto).Commits(t.Context(), ids)
	check(t, err)
	told := 0
	for _, ending := range []string{"pack", "idx"} {
		names, _ := filepath.Glob(filepath.Join(r.dir, ".git", "objects", "pack", "*."+ending))
		check(t, os.Chmod(names[0], 0o644))
		good, err := os.ReadFile(names[0])
		check(t, err)
		for at := 0; at < len(good); at += 1 + len(good)/120 {
			bad := bytes.Clone(good)
			bad[at] ^= 0x21
			check(t, os.WriteFile(names[0], bad, 0o644))
			got, err := vcs.StoredChanges(t.Context(), r.open(vcs.ReaderAuto), ids)
			if err == nil {
				told++
				if diff := cmp.Diff(reduced(want), reduced(got)); diff != "" {
					t.Errorf("byte %d of the %s is another, and so are the changes:\n%s", at, ending, diff)
				}
			}
		}
		check(t, os.WriteFile(names[0], good, 0o644))
	}
	if told == 0 || told > 200 {
		t.Errorf("%d of 240 spoilt packs were read", told)
	}
}

// TestVersionsEndWithTheCaller: an error of the caller's, or its cancelling, ends the reading and is told.
func TestVersionsEndWithTheCaller(t *testing.T) {
	t.Parallel()
	r := fresh(t).imported(wildPast(2))
	for _, reader := range []vcs.Reader{vcs.ReaderAuto, vcs.ReaderGit} {
		opened := r.open(reader)
		entries, err := opened.Tree(t.Context(), r.ask("rev-parse", "HEAD"))
		check(t, err)
		var o vcs.Reading
		for _, e := range entries {
			if e.Regular() {
				o.IDs, o.Like = append(o.IDs, e.ID), append(o.Like, -1)
			}
		}
		o.Begin = func(int) {}
		o.Take = func(int, *vcs.Version) error { return os.ErrClosed }
		if err = opened.Versions(t.Context(), o); !isOnly(err, os.ErrClosed) {
			t.Errorf("%v: got %v", reader, err)
		}
		ctx, cancel := context.WithCancel(t.Context())
		o.Take = func(int, *vcs.Version) error { cancel(); return nil }
		for range 3 { // what was read by then may have been all
			err = opened.Versions(ctx, o)
		}
		if !isOnly(err, context.Canceled) {
			t.Errorf("%v: cancelled: got %v", reader, err)
		}
	}
}

func isOnly(err, want error) bool { return err != nil && strings.Contains(err.Error(), want.Error()) }

// FuzzChange: whatever a pack tells of a content as the change of another, it fails or the edits make the one of the
// other.
func FuzzChange(f *testing.F) {
	f.Add([]byte("abcdefgh"), []byte{8, 9, 0x91, 4, 4, 1, 'x', 0x90, 4})
	f.Add([]byte("abcdefgh"), []byte{8, 12, 0x91, 4, 4, 0x90, 4, 0x91, 2, 4})
	f.Add([]byte("abcdefgh"), []byte{8, 0x80, 0x80, 0x80, 0x80, 0x80, 0x80})
	f.Fuzz(func(t *testing.T, base, delta []byte) {
		text, edits, err := vcs.Patched(base, delta)
		if err == nil && edited(base, text, edits) != string(text) {
			t.Errorf("%v does not make %q of %q", edits, text, base)
		}
		if got := edited(base, delta, vcs.Differ(base, delta)); got != string(delta) {
			t.Errorf("%q was made of %q, and not %q", got, base, delta)
		}
	})
}

// FuzzPack reads objects of a pack that is told to be whole: it fails or ends.
func FuzzPack(f *testing.F) {
	dir, err := filepath.EvalSymlinks(f.TempDir())
	check(f, err)
	r := (&repo{t: f, dir: dir, env: environment(f)}).imported(wildPast(1))
	r.git("repack", "-adfq")
	names, _ := filepath.Glob(filepath.Join(r.dir, ".git", "objects", "pack", "*.pack"))
	data, err := os.ReadFile(names[0])
	check(f, err)
	index, err := os.ReadFile(strings.TrimSuffix(names[0], ".pack") + ".idx")
	check(f, err)
	var ids [][20]byte
	for _, name := range strings.Fields(r.git("rev-list", "--objects", "--no-object-names", "HEAD"))[:64] {
		id, err := hex.DecodeString(name)
		check(f, err)
		ids = append(ids, [20]byte(id))
	}
	f.Add(uint32(40), []byte{0xff, 0xff}, uint32(1100), []byte{1})
	f.Fuzz(func(_ *testing.T, at uint32, some []byte, where uint32, other []byte) {
		bad, list := bytes.Clone(data), bytes.Clone(index)
		copy(bad[int(at)%len(bad):], some)
		copy(list[int(where)%len(list):], other)
		for _, id := range ids {
			_, _ = vcs.PackedObject(bad, list, id)
		}
	})
}
