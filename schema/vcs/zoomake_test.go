package vcs_test

import (
	"bytes"
	"os"
	"path/filepath"
)

// indexVersion holds the index to a version of its format: gitformat-index(5) has it as a number of 32 bits behind
// four letters.
func (r *repo) indexVersion(want byte) *repo {
	r.t.Helper()
	text, err := os.ReadFile(filepath.Join(r.dir, ".git", "index"))
	check(r.t, err)
	if text[7] != want {
		r.t.Fatalf("the index is of version %d, and not %d", text[7], want)
	}
	return r
}

// monitored lets a hook watch the work tree: one that says each time that anything may have changed. It leaves an
// extension in the index.
func (r *repo) monitored() *repo {
	r.t.Helper()
	program := filepath.Join(filepath.Dir(r.dir), "monitor")
	check(r.t, os.WriteFile(program, []byte("#!/bin/sh\nprintf 'token\\0/\\0'\n"), 0o755))
	r.git("config", "core.fsmonitor", program)
	r.git("update-index", "--fsmonitor")
	text, err := os.ReadFile(filepath.Join(r.dir, ".git", "index"))
	check(r.t, err)
	if !bytes.Contains(text, []byte("FSMN")) {
		r.t.Fatal("the index holds nothing of a monitor")
	}
	return r
}

// conflict makes a merge that stopped: one path changed on both sides, one removed on one side.
func conflict(f *repo) *repo {
	r := f.plant()
	r.git("commit", "-qm", "Add floor 3")
	r.git("switch", "-q", "--force", "-c", "other")
	r.commit("plant.hcl", "theirs\n", "Their change")
	r.git("switch", "-q", "main")
	r.commit("plant.hcl", "ours\n", "Our change")
	if _, err := r.run("merge", "other"); err == nil {
		f.t.Fatal("the merge was expected to stop")
	}
	return r
}

// linked makes a repository with symbolic links, an executable file and a submodule.
func linked(f *repo) *repo {
	r := f.plant()
	for name, target := range map[string]string{"inside": "plant.hcl", "outside": "../../secret", "folder": "floor"} {
		check(f.t, os.Symlink(target, filepath.Join(r.dir, name)))
	}
	r.write("run.sh", "#!/bin/sh\n")
	check(f.t, os.Chmod(filepath.Join(r.dir, "run.sh"), 0o755))
	r.git("add", "inside", "outside", "folder", "run.sh")
	r.git("submodule", "-q", "add", r.dir, "module")
	r.git("commit", "-qm", "Links and a submodule")
	return r
}
