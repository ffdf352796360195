package cli_test

import (
	"bytes"
	"encoding/hex"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// bundled is a bundle of the room, with its file and the folder that it lies in.
func (r *room) bundled(args ...string) (file string) {
	r.t.Helper()
	file = filepath.Join(r.t.TempDir(), "evidence.zip")
	r.in(r.dir, 0, append([]string{"audit", "--bundle", file}, args...)...)
	return file
}

// refused insists that a bundle does not hold, and on the first words about it.
func (r *room) refused(file, want string) {
	r.t.Helper()
	said := strings.Join(strings.Fields(r.in(filepath.Dir(file), 1, "audit", "--verify", file)), " ")
	if !strings.HasPrefix(said, "does not hold: "+want) {
		r.t.Errorf("said %.300q, want %q", said, want)
	}
}

// commits makes a git bundle of names in the room.
func (r *room) commits(names ...string) []byte {
	r.t.Helper()
	file := filepath.Join(r.t.TempDir(), "commits")
	r.mustGit(r.dir, append([]string{"bundle", "create", "--quiet", file}, names...)...)
	data, err := os.ReadFile(file)
	if err != nil {
		r.t.Fatal(err)
	}
	return data
}

// TestCommitsOfABundleAreTheirOwnProof forges commits, as somebody would who can
// make every digest of the archive fit.
func TestCommitsOfABundleAreTheirOwnProof(t *testing.T) {
	t.Parallel()
	r := newRoom(t)
	r.pastOf(9, 24)
	file, forged := r.bundled(), filepath.Join(t.TempDir(), "forged.zip")
	head, text := r.ask("rev-parse", "HEAD"), r.ask("show", "HEAD~5:plant.hcl")+"\n"
	r.mustGit(r.dir, "branch", "audited", "HEAD")
	with := func(commits []byte, alter func(map[string][]byte)) {
		altered(t, file, forged, func(f map[string][]byte) {
			f["commits.bundle"] = commits
			if alter != nil {
				alter(f)
			}
		})
	}

	with(r.commits("HEAD~3..audited"), nil)
	r.refused(forged, "commits.bundle: git does not take it")

	with(r.commits("--filter=blob:none", "audited"), nil)
	r.refused(forged, "commits.bundle: git does not take it")

	// A commit is dropped: what follows it has other ids.
	r.mustGit(r.dir, "checkout", "-qfB", "audited", "HEAD~2")
	r.mustGit(r.dir, "commit", "-q", "--allow-empty", "-m", "day 24")
	with(r.commits("audited"), nil)
	r.refused(forged, "commits.bundle: its last commit is not "+head)

	// One commit takes the place of another, for whoever looks at it.
	r.mustGit(r.dir, "checkout", "-qfB", "audited", head)
	r.mustGit(r.dir, "replace", head, r.ask("commit-tree", "-p", "HEAD^", "-m", "day 24", "HEAD~5^{tree}"))
	with(r.commits("audited", "refs/replace/"+head), func(f map[string][]byte) { f["records/plant.hcl"] = []byte(text) })
	r.refused(forged, "records/plant.hcl: it differs from commit "+head[:10])
	r.mustGit(r.dir, "replace", "-d", head)

	// A tree leads out of itself. Git does not make such a one without force.
	inner, err := hex.DecodeString(r.ask("rev-parse", "HEAD^{tree}"))
	if err != nil {
		t.Fatal(err)
	}
	tree := r.stored("tree", "40000 ..\x00"+string(inner))
	r.mustGit(r.dir, "checkout", "-q", "--detach")
	r.mustGit(r.dir, "update-ref", "refs/heads/audited", r.ask("commit-tree", "-m", "out", tree))
	with(r.commits("audited"), func(f map[string][]byte) {
		f["about.json"] = bytes.ReplaceAll(f["about.json"], []byte(head), []byte(r.ask("rev-parse", "audited")))
	})
	r.refused(forged, "records/plant.hcl: commit")
}

// stored puts an object into the room's repository as it is.
func (r *room) stored(kind, content string) string {
	r.t.Helper()
	file := filepath.Join(r.t.TempDir(), "object")
	if err := os.WriteFile(file, []byte(content), 0o600); err != nil {
		r.t.Fatal(err)
	}
	return r.ask("hash-object", "-t", kind, "-w", "--literally", file)
}

// TestABundleThatIsTooMuch holds what unpacks to more than anybody reads against
// the bounds, and half a bundle against being one.
func TestABundleThatIsTooMuch(t *testing.T) {
	t.Parallel()
	r := newRoom(t)
	r.pastOf(10, 6)
	file := r.bundled()
	data, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	half := filepath.Join(t.TempDir(), "half.zip")
	if err := os.WriteFile(half, data[:len(data)/2], 0o600); err != nil {
		t.Fatal(err)
	}
	r.refused(half, "the archive: it can not be unpacked")

	was := r.ask("rev-parse", "HEAD")
	r.write("plant.hcl", "plant \"pier\" {}\n"+strings.Repeat("# nothing\n", 7<<20))
	r.mustGit(r.dir, "add", ".")
	r.mustGit(r.dir, "commit", "-qm", "a file of 70 MB")
	r.mustGit(r.dir, "branch", "audited")
	much := filepath.Join(t.TempDir(), "much.zip")
	altered(t, file, much, func(f map[string][]byte) {
		f["commits.bundle"] = r.commits("audited")
		f["about.json"] = bytes.ReplaceAll(f["about.json"], []byte(was), []byte(r.ask("rev-parse", "HEAD")))
	})
	r.refused(much, "commits.bundle: the records of its last commit can not be read: plant.hcl")

	altered(t, file, much, func(f map[string][]byte) { f["about.json"] = make([]byte, 2<<20) })
	r.refused(much, "about.json: it is of 2097152 bytes")
	for name, about := range map[string]string{"nothing": "{}", "words": "good morning", "another form": `{"format":2}`, "an option": `{"format":1,"to":"--all"}`, "no day": strings.Replace(string(r.about(file)), "2026-03-02", "tomorrow", 1)} {
		altered(t, file, much, func(f map[string][]byte) { f["about.json"] = []byte(about) })
		t.Log(name)
		r.refused(much, "about.json: ")
	}
}

// about is the description that an archive holds.
func (r *room) about(file string) (text []byte) {
	r.t.Helper()
	altered(r.t, file, filepath.Join(r.t.TempDir(), "copy.zip"), func(f map[string][]byte) { text = f["about.json"] })
	return text
}

// TestAnotherVersionIsNoProof lays a difference at the door of another version: it is
// named, and nothing is said to hold.
func TestAnotherVersionIsNoProof(t *testing.T) {
	t.Parallel()
	r := newRoom(t)
	r.pastOf(11, 6)
	file, other := r.bundled(), filepath.Join(t.TempDir(), "other.zip")
	for name, c := range map[string]struct{ from, to, want string }{
		"tool":  {`"tool": "`, `"tool": "v9 `, "report/audit.json: it differs from the report made again in line"},
		"rules": {`"rule_set": "`, `"rule_set": "9`, "the report was made with other rules"},
	} {
		altered(t, file, other, func(f map[string][]byte) {
			f["about.json"] = bytes.Replace(f["about.json"], []byte(c.from), []byte(c.to), 1)
		})
		said := strings.Join(strings.Fields(r.in(filepath.Dir(other), 1, "audit", "--verify", other)), " ")
		if !strings.Contains(said, c.want) || strings.Contains(said, "everything holds") {
			t.Errorf("%s: said %q", name, said)
		}
	}
}
