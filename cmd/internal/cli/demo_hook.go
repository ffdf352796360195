package cli

import (
	"context"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"

	"homerun/examples"
	"homerun/schema/console"
)

// hook sets the hook as "git homerun hook install" does.
func (d *demo) hook(ctx context.Context, c examples.Commit) error {
	inside := d.inside(d.env(c))
	program, err := d.app.Program()
	if err != nil {
		return fmt.Errorf("the path of this program can not be told: %w", err)
	}
	if passing(program) {
		if program, err = d.carry(program); err != nil {
			return err
		}
	}
	inside.Program = func() (string, error) { return program, nil }
	inside.Out = io.Discard // the demo says so in its own words
	if err := inside.run(ctx, []string{"hook", "install"}); err != nil {
		return err
	}
	d.page.Line(0, 2, console.Plain("The hook is set: git homerun hook install"))
	d.page.Blank()
	return d.page.Err()
}

// passing says whether a program lies where it will not stay: "go run" keeps
// what it builds among temporary files or in its cache.
func passing(program string) bool {
	for part := range strings.SplitSeq(filepath.ToSlash(program), "/") {
		if strings.HasPrefix(part, "go-build") {
			return true
		}
	}
	return within(program, os.TempDir())
}

// carry copies the program into the repository's own folder, so that the hook
// has something to run later.
func (d *demo) carry(program string) (string, error) {
	d.carried = true
	content, err := os.ReadFile(program)
	if err != nil {
		return "", fmt.Errorf("this program can not be copied for the hook: %w", err)
	}
	dir := filepath.Join(d.dir, ".git", "homerun")
	if err := os.Mkdir(dir, 0o777); err != nil {
		return "", fmt.Errorf("this program can not be copied for the hook: %w", err)
	}
	to := filepath.Join(dir, "git-homerun")
	if ext := filepath.Ext(program); strings.EqualFold(ext, ".exe") {
		to += ext
	}
	return to, replaceFile(to, content, 0o755)
}
