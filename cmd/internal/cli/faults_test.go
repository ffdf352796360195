//go:build unix

package cli_test

import (
	"bytes"
	"fmt"
	"io/fs"
	"maps"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
)

// photo is every file below the repository's top that a fault must not change:
// the work tree, the index, the settings and the hooks.
func (r *room) photo() map[string]string {
	r.t.Helper()
	seen := make(map[string]string)
	err := filepath.WalkDir(r.dir, func(path string, d fs.DirEntry, err error) error {
		name := strings.TrimPrefix(strings.TrimPrefix(path, r.dir), "/")
		switch {
		case err != nil:
			return err
		case d.IsDir() && (name == ".git/objects" || name == ".git/logs"):
			return filepath.SkipDir
		case d.IsDir():
			return nil
		}
		text, err := os.ReadFile(path)
		seen[name] = string(text)
		return err
	})
	if err != nil {
		r.t.Fatal(err)
	}
	return seen
}

// untidy is a plant with records that fmt lays out, outputs of an earlier run,
// and the three texts of a merge.
func (r *room) untidy(files int) {
	r.t.Helper()
	for i := range files {
		r.write(fmt.Sprintf("spaces-%02d.hcl", i), fmt.Sprintf("space \"S%02d\" {\n      kind = \"corridor\"\n}\n", i))
	}
	r.write("racks.hcl", "space \"1A\" {\n  kind = \"telecommunications-room\"\n}\n\nrack \"1A-R1\" {\n  space = \"1A\"\n  units = 42\n}\n")
	r.write("annexe/note.txt", "a folder without a plant\n")
	r.write("rack.csv", "label,space,units\n1A-R1,1A,45\n")
	r.write("records.csv", "label,space,units\n1A-R2,1A,42\n")
	r.mustGit(r.dir, "add", ".")
	r.mustGit(r.dir, "commit", "-qm", "first")
	for _, old := range []string{"report", "labels.pdf", "sheets/sheet-001.svg", "sheets/sheet-002.svg", "sheets/sheet-099.svg"} {
		r.write(old, "of yesterday: "+old+"\n")
	}
	for name, length := range map[string]string{"base": "1 m", "ours": "1 m", "theirs": "3 m"} {
		r.write(name, "run \"1A-A01\" {\n  length = \""+length+"\"\n}\n")
	}
	r.write(".git/hooks/pre-commit", "#!/bin/sh\n# somebody else's\n")
	r.write("ours", "run \"1A-A01\" {\n  length = \"1 m\"\n  cable = \"c6a\"\n}\n")
}

// fsck holds the repository against git's own check.
func (r *room) fsck() {
	r.t.Helper()
	r.mustGit(r.dir, "fsck", "--strict", "--full")
}

// differ says which files differ between two photos.
func differ(before, after map[string]string) []string {
	var names []string
	for name := range maps.Keys(before) {
		if text, there := after[name]; !there || text != before[name] {
			names = append(names, name)
		}
	}
	for name := range maps.Keys(after) {
		if _, there := before[name]; !there {
			names = append(names, name)
		}
	}
	slices.Sort(names)
	return names
}

// writing are the command lines that write, and where in the repository one
// stands for them.
func writing() [][2]string {
	return [][2]string{
		{"fmt"},
		{"import rack.csv"},
		{"import records.csv --kind rack --into new/racks.hcl"},
		{"export --output report"},
		{"init", "annexe"},
		{"labels --replace --output labels.pdf"},
		{"labels --replace --format svg --output sheets"},
		{"order HEAD --format html --output report"},
		{"lint --output report"},
		{"audit --output report"},
		{"audit --bundle report"},
		{"merge-driver base ours theirs 7 runs.hcl"},
		{"setup"},
		{"hook install"},
	}
}

// standing runs a program in a folder of the repository.
func (r *room) standing(folder string, args ...string) (out string, status int) {
	r.t.Helper()
	cmd := exec.Command(args[0], args[1:]...)
	cmd.Dir, cmd.Env = filepath.Join(r.dir, folder), r.env
	var both bytes.Buffer
	cmd.Stdout, cmd.Stderr = &both, &both
	_ = cmd.Run()
	return both.String(), cmd.ProcessState.ExitCode()
}

// noRoom is how the system says that there is none; git's own settings are said by
// git not to be written, and not why.
var noRoom = regexp.MustCompile(`(?i)no space left|file too large|failed to write new configuration file`)

// TestFullDisk fills the file system, and runs everything that writes: what was
// there stays to the byte, nothing is left beside it, and the error says why. With
// room again, the same command does its work. Where no small file system can be
// mounted, files that may not grow stand for it.
func TestFullDisk(t *testing.T) {
	t.Parallel()
	if testing.Short() {
		t.Skip("it runs a program of its own many times")
	}
	for _, line := range writing() {
		t.Run(line[0], func(t *testing.T) {
			t.Parallel()
			r := newRoom(t)
			full, room := r.smallDisk()
			r.untidy(3)
			before := r.photo()
			words := slices.Concat(full(), []string{r.program}, strings.Fields(line[0]))
			out, status := r.standing(line[1], words...)
			if status != 3 || !strings.Contains(out, "git homerun: ") || !noRoom.MatchString(out) {
				t.Errorf("exit status %d: %s", status, out)
			}
			if diff := differ(before, r.photo()); len(diff) > 0 {
				t.Errorf("changed or left: %v\n%s", diff, out)
			}
			room()
			r.fsck()
			out, status = r.standing(line[1], slices.Concat([]string{r.program}, strings.Fields(line[0]))...)
			if after := r.photo(); status > 1 || len(differ(before, after)) == 0 {
				t.Errorf("with room again: exit status %d: %s", status, out)
			}
		})
	}
}

// TestDamagedObjects takes away or spoils what git keeps: every command that reads
// it says so and changes nothing.
func TestDamagedObjects(t *testing.T) {
	t.Parallel()
	for name, damage := range map[string]func(r *room) error{
		"a missing blob": func(r *room) error {
			id, _ := r.standing("", "git", "rev-parse", "HEAD:racks.hcl")
			return os.Remove(filepath.Join(r.dir, ".git", "objects", id[:2], strings.TrimSpace(id[2:])))
		},
		"a damaged object": func(r *room) error {
			id, _ := r.standing("", "git", "rev-parse", "HEAD:racks.hcl")
			file := filepath.Join(r.dir, ".git", "objects", id[:2], strings.TrimSpace(id[2:]))
			return os.Rename(filepath.Join(r.dir, "ours"), file)
		},
		"a damaged tree": func(r *room) error {
			id, _ := r.standing("", "git", "rev-parse", "HEAD^{tree}")
			file := filepath.Join(r.dir, ".git", "objects", id[:2], strings.TrimSpace(id[2:]))
			return os.Rename(filepath.Join(r.dir, "ours"), file)
		},
		"a truncated pack": func(r *room) error {
			r.mustGit(r.dir, "gc", "-q")
			packs, err := filepath.Glob(filepath.Join(r.dir, ".git", "objects", "pack", "*.pack"))
			if err != nil || len(packs) != 1 {
				return fmt.Errorf("%d packs: %w", len(packs), err)
			}
			if err = os.Chmod(packs[0], 0o600); err != nil {
				return err
			}
			return os.Truncate(packs[0], 60)
		},
	} {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			r := newRoom(t)
			r.untidy(3)
			r.write("new.hcl", "space \"1Z\" {\n  kind = \"corridor\"\n}\n")
			r.mustGit(r.dir, "add", "new.hcl")
			if err := damage(r); err != nil {
				t.Fatal(err)
			}
			before := r.photo()
			for _, line := range []string{"lint --at HEAD", "lint --hook", "lint --since HEAD", "order HEAD", "history 1A", "audit", "audit --bundle bundle", "labels --at HEAD --output other.pdf", "takeoff HEAD"} {
				out, status := r.homerun(strings.Fields(line)...)
				if status != 2 && status != 3 || !strings.HasPrefix(out, "git homerun: ") || strings.Contains(out, "panic") {
					t.Errorf("%s: exit status %d: %s", line, status, out)
				}
			}
			if diff := cmp.Diff(before, r.photo()); diff != "" {
				t.Errorf("changed (-before +after):\n%s", diff)
			}
			if out, status := r.homerun("lint"); status != 0 {
				t.Errorf("the working tree can still be read, but: exit status %d: %s", status, out)
			}
		})
	}
}

// TestLeftoversAreSwept finds what killed programs left: a day later it goes, and
// what another program may be writing stays.
func TestLeftoversAreSwept(t *testing.T) {
	t.Parallel()
	r := newRoom(t)
	r.untidy(1)
	for name, age := range map[string]time.Duration{"homerun-1-0.part": 25 * time.Hour, "homerun-2-0.part": time.Hour, "config.part": 99 * time.Hour} {
		r.write(".git/"+name, "half a fi")
		then := time.Now().Add(-age)
		if err := os.Chtimes(filepath.Join(r.dir, ".git", name), then, then); err != nil {
			t.Fatal(err)
		}
	}
	if out, status := r.homerun("fmt"); status != 0 {
		t.Fatalf("exit status %d: %s", status, out)
	}
	left, err := filepath.Glob(filepath.Join(r.dir, ".git", "*.part"))
	if err != nil || len(left) != 2 || filepath.Base(left[0]) != "config.part" || filepath.Base(left[1]) != "homerun-2-0.part" {
		t.Errorf("left: %v, %v", left, err)
	}
}
