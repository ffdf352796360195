//go:build unix

package vcs_test

import (
	"encoding/json"
	"errors"
	"io/fs"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"syscall"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// TestUnreadable proves that what the user may not read is named, and everything else read. The superuser may read
// all, so then the test runs itself again as another user.
func TestUnreadable(t *testing.T) {
	t.Parallel()
	r := plant(t)
	r.write("closed/new.hcl", "new\n")
	r.write("shut/known.hcl", "known\n")
	r.write("locked.hcl", "locked\n")
	r.git("add", "shut/known.hcl")
	binary := filepath.Join(filepath.Dir(r.dir), "look")
	self, err := os.Executable()
	check(t, err)
	text, err := os.ReadFile(self)
	check(t, err)
	check(t, os.WriteFile(binary, text, 0o755))
	cmd := exec.CommandContext(t.Context(), binary)
	cmd.Dir, cmd.Env = r.dir, r.with("VCS_TEST_LOOK_AROUND=1").env
	if os.Geteuid() == 0 {
		const nobody = 65534
		check(t, filepath.WalkDir(r.dir, func(path string, _ fs.DirEntry, err error) error {
			return errors.Join(err, os.Lchown(path, nobody, nobody))
		}))
		check(t, os.Chmod(filepath.Dir(r.dir), 0o755))
		check(t, os.Chmod(filepath.Dir(filepath.Dir(r.dir)), 0o755))
		cmd.SysProcAttr = &syscall.SysProcAttr{Credential: &syscall.Credential{Uid: nobody, Gid: nobody}}
	}
	for _, name := range []string{"closed", "shut", "locked.hcl"} {
		path := filepath.Join(r.dir, name)
		check(t, os.Chmod(path, 0))
		t.Cleanup(func() { check(t, os.Chmod(path, 0o755)) })
	}
	out, err := cmd.Output()
	check(t, err)
	var got listed
	check(t, json.Unmarshal(out, &got))
	if diff := cmp.Diff([]string{"floor/1.hcl", "floor/3.hcl", "locked.hcl", "plant.hcl"}, got.Paths); diff != "" {
		t.Errorf("paths (-want +got):\n%s", diff)
	}
	if !got.Unreadable || !strings.Contains(got.Said, "closed") || !strings.Contains(got.Said, "shut/known.hcl") {
		t.Errorf("work tree: got %q, want ErrUnreadable with both names", got.Said)
	}
	if !got.Denied || !strings.Contains(got.File, "locked.hcl") {
		t.Errorf("file: got %q, want fs.ErrPermission with the name", got.File)
	}
}
