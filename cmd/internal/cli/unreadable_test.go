//go:build unix

package cli_test

import (
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
)

// TestUnreadableFolder takes away the permission to read a folder of records:
// the job can not be done, and nobody may take that for a clean plant.
func TestUnreadableFolder(t *testing.T) {
	t.Parallel()
	r := newRoom(t)
	r.write("runs/a.hcl", "space \"1A\" {\n  kind = \"corridor\"\n}\n")
	who := ordinaryUser(t, r)
	closed := filepath.Join(r.dir, "runs")
	if err := os.Chmod(closed, 0); err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { _ = os.Chmod(closed, 0o755) })
	out, status := r.as(who, "lint")
	if status != 3 || !strings.Contains(out, "runs") || !strings.Contains(out, "permission") {
		t.Errorf("exit status %d, want 3:\n%s", status, out)
	}
}

// ordinaryUser gives the repository to a user without privileges where the
// tests run as root, for whom no folder is unreadable.
func ordinaryUser(t *testing.T, r *room) *syscall.SysProcAttr {
	t.Helper()
	if os.Geteuid() != 0 {
		return nil
	}
	const nobody = 65534
	err := filepath.WalkDir(filepath.Dir(r.dir), func(path string, _ fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		return os.Chown(path, nobody, nobody)
	})
	if err != nil {
		t.Fatal(err)
	}
	for dir := filepath.Dir(r.dir); len(dir) > len(os.TempDir()); dir = filepath.Dir(dir) {
		if err := os.Chmod(dir, 0o755); err != nil { //nolint:gosec // the other user has to pass
			t.Fatal(err)
		}
	}
	return &syscall.SysProcAttr{Credential: &syscall.Credential{Uid: nobody, Gid: nobody}}
}
