package cli_test

import (
	"context"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"homerun/cmd/internal/cli"
	"homerun/examples"
)

// What git has in the working tree at the end is what the story says, byte for
// byte, and nothing of the user's settings can change it.
func TestDemoLeavesTheExample(t *testing.T) {
	t.Parallel()
	stand := t.TempDir()
	dir := filepath.Join(stand, "made")
	var out, said strings.Builder
	status := cli.Main(context.Background(), []string{"demo", "--dir", dir}, cli.Process{
		In: strings.NewReader(""), Out: &out, Err: &said,
		Env:     append(os.Environ(), "GIT_DIR=/nowhere", "GIT_CONFIG_COUNT=1", "GIT_CONFIG_KEY_0=commit.gpgSign", "GIT_CONFIG_VALUE_0=true"),
		Dir:     func() (string, error) { return stand, nil },
		Program: os.Executable, Now: func() time.Time { return time.Date(2040, 1, 1, 0, 0, 0, 0, time.UTC) },
	})
	if status != 0 {
		t.Fatalf("status %d\n%s\n%s", status, said.String(), out.String())
	}
	commits, err := examples.Story()
	if err != nil {
		t.Fatal(err)
	}
	all, err := examples.States(commits)
	if err != nil {
		t.Fatal(err)
	}
	want, seen := all[len(all)-1].Files, 0
	err = filepath.WalkDir(dir, func(path string, d fs.DirEntry, err error) error {
		switch {
		case err != nil:
			return err
		case d.IsDir() && d.Name() == ".git":
			return filepath.SkipDir
		case d.IsDir():
			return nil
		}
		rel, _ := filepath.Rel(dir, path)
		text, err := os.ReadFile(path)
		if string(text) != want[filepath.ToSlash(rel)] {
			t.Errorf("%s is not what the story leaves", rel)
		}
		seen++
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	if seen != len(want) {
		t.Errorf("%d files, the story leaves %d", seen, len(want))
	}
	for line := range strings.Lines(out.String()) {
		if width := len([]rune(strings.TrimRight(line, "\n"))); width > 80 && strings.Contains(strings.TrimSpace(line), " ") {
			t.Errorf("%d columns: %s", width, line)
		}
	}
}
