package vcs_test

import (
	"bytes"
	"crypto/sha1"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"homerun/schema/vcs"
)

// What git prints holds names and messages that anybody may have written, and the files of a repository come from
// whoever made it. On any bytes the readers of this package fail at most; what they give keeps its promises.

const someID = "5626abf0f72e58d7a153368ba57db4c673c0e171"

func FuzzLog(f *testing.F) {
	head := "tree " + someID + "\nparent " + someID + "\nauthor A <a@example.org> 1551600000 +0130\ncommitter A <a@example.org> 1 +0000\n"
	f.Add([]byte("commit " + someID + "\n" + head + "\n    subject\n    \n    body\n"))
	f.Add([]byte("commit " + someID + " (from " + someID + ")\n" + head + "gpgsig -----BEGIN SSH SIGNATURE-----\n x\n\n    subject\n\n:100644 100644 " + someID + " " + someID + " M\x00plant.hcl\x00:000000 100644 " + strings.Repeat("0", 40) + " " + someID + " A\x00a b\x00\x00"))
	f.Add([]byte(":\x00commit \x00commit x\n\n:\x00"))
	f.Fuzz(func(t *testing.T, text []byte) {
		commits, err := vcs.ReadLog(bytes.NewReader(text))
		for _, c := range commits {
			if len(c.Tree) != 40 && len(c.Tree) != 64 || strings.ContainsAny(c.Subject, "\n\x00") || c.Author.When.Year() > 9999 {
				t.Errorf("%+v, %v", c, err)
			}
			for _, d := range c.Changed {
				if d.Path == "" || d.Parent < 0 || d.Parent > 0 && d.Parent >= len(c.Parents) {
					t.Errorf("%+v", d)
				}
			}
		}
	})
}

// FuzzLists writes what was read as git would and holds that to what was read.
func FuzzLists(f *testing.F) {
	f.Add("100644 " + someID + " 0\tplant.hcl")
	f.Add("160000 " + someID + " 3\ta\tb\nc")
	f.Add("100755 blob " + someID + "\t" + strings.Repeat("d/", 600) + "f")
	f.Add("9 9 9")
	f.Fuzz(func(t *testing.T, line string) {
		head, name, _ := strings.Cut(line, "\t")
		words := strings.Fields(head)
		if e, err := vcs.ReadStaged(line); err == nil && (e.Path != name || e.ID != words[1] || fmt.Sprint(e.Stage) != strings.TrimLeft(words[2], "+0") && e.Stage != 0) {
			t.Errorf("%q was read as %+v", line, e)
		}
		if e, err := vcs.ReadListed(line); err == nil && (e.Path != name || e.ID != words[2] || strings.TrimLeft(fmt.Sprintf("%o", e.Mode), "0") != strings.TrimLeft(words[0], "0")) {
			t.Errorf("%q was read as %+v", line, e)
		}
	})
}

// FuzzBatch holds the contents that were read to standing in the answer, each behind its size.
func FuzzBatch(f *testing.F) {
	f.Add([]byte(someID + " blob 4\nfour\n" + someID + " blob 0\n\n"))
	f.Add([]byte(someID + " blob 99999999999999999999\n"))
	f.Add([]byte(someID + " blob 16777216\nshort"))
	f.Add([]byte(someID + " missing\n"))
	f.Fuzz(func(t *testing.T, answer []byte) {
		rest := answer
		for _, data := range vcs.ReadBatch(someID, bytes.NewReader(answer)) {
			_, after, found := bytes.Cut(rest, []byte("\n"))
			if !found || !bytes.HasPrefix(after, append(bytes.Clone(data), '\n')) {
				t.Fatalf("%q is not in %q", data, answer)
			}
			rest = after[len(data)+1:]
		}
	})
}

// FuzzConfig: an extension is a name in lower case, or there is none.
func FuzzConfig(f *testing.F) {
	f.Add([]byte("[core]\n\trepositoryformatversion = 1\n[extensions]\n\tobjectFormat = sha256\n\tworktreeConfig = true\n"))
	f.Add([]byte("[extensions \"x\"]\n\ta = \"\\\n"))
	f.Add([]byte("\xef\xbb\xbf[a]b=c;d\n[[[\x00"))
	f.Fuzz(func(t *testing.T, text []byte) {
		name, err := vcs.ReadExtension(bytes.NewReader(text))
		if name != strings.ToLower(name) || err != nil && name != "" {
			t.Errorf("%q, %v", name, err)
		}
	})
}

// FuzzIndex starts from the indexes that git wrote for the forms of repository.
func FuzzIndex(f *testing.F) {
	for _, name := range []string{"index version 2", "index version 3", "index version 4", "fsmonitor, a hook", "split index", "sparse index"} {
		f.Add(indexOf(f, name))
	}
	f.Fuzz(func(t *testing.T, text []byte) {
		body := text[:max(len(text)-sha1.Size, 0)]
		sum := sha1.Sum(body) // what is spoilt after the sum was made is refused by it
		entries, err := vcs.ReadIndex(bytes.NewReader(append(bytes.Clone(body), sum[:]...)))
		for _, e := range entries {
			if err != nil || len(e.ID) != 40 || e.Stage < 0 || e.Stage > 3 {
				t.Errorf("%+v, %v", e, err)
			}
		}
	})
}

// indexOf is the index of a form of repository.
func indexOf(f *testing.F, name string) []byte {
	f.Helper()
	for _, form := range forms {
		if form.name != name {
			continue
		}
		dir, err := filepath.EvalSymlinks(f.TempDir())
		if err != nil {
			f.Fatal(err)
		}
		made := form.make(&repo{t: f, dir: dir, env: environment(f)})
		text, err := os.ReadFile(filepath.Join(made.dir, ".git", "index"))
		if err != nil {
			f.Fatal(err)
		}
		return text
	}
	f.Fatalf("there is no form %q", name)
	return nil
}
