package cli_test

import (
	"errors"
	"os"
	"path/filepath"
	"syscall"
)

// smallDisk moves the repository to a small file system of its own. It returns
// what fills it, with the words that stand before a command then, and what makes
// room again.
func (r *room) smallDisk() (full func() []string, room func()) {
	r.t.Helper()
	disk := filepath.Join(filepath.Dir(r.dir), "disk")
	if err := os.Mkdir(disk, 0o755); err != nil {
		r.t.Fatal(err)
	}
	if err := syscall.Mount("tmpfs", disk, "tmpfs", 0, "size=4m"); err != nil {
		return smallFiles()
	}
	r.t.Cleanup(func() { _ = syscall.Unmount(disk, syscall.MNT_DETACH) })
	if err := os.CopyFS(filepath.Join(disk, "pier"), os.DirFS(r.dir)); err != nil {
		r.t.Fatal(err)
	}
	r.dir = filepath.Join(disk, "pier")
	ballast := filepath.Join(disk, "ballast")
	return func() []string {
			f, err := os.Create(ballast)
			for err == nil {
				_, err = f.Write(make([]byte, 4096))
			}
			if !errors.Is(err, syscall.ENOSPC) {
				r.t.Fatal(err)
			}
			_ = f.Close()
			return nil
		}, func() {
			if err := os.Remove(ballast); err != nil {
				r.t.Fatal(err)
			}
		}
}
