package cli

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"homerun/schema"
	"homerun/schema/vcs"
)

func newHook(a *app) *cobra.Command {
	cmd := &cobra.Command{
		Use:   "hook",
		Short: "check every commit, and what is pushed",
		Long: `Check what is staged at every commit, and what is pushed, and refuse what
introduces nonconformities or makes one worse. What stood before is counted in
one line. In a bare repository, check what is pushed to its protected branches:
those that homerun.protected names, such as main or release/*, or the one that
HEAD names where nothing is set.`,
		Args: func(_ *cobra.Command, args []string) error {
			if len(args) == 0 {
				return nil
			}
			return &usageError{"hook has no command " + schema.Quote(args[0]), didYouMeanBy(args[0], []string{"install", "uninstall"}, func(near string) string { return "git homerun hook " + near }, "the commands are install and uninstall")}
		},
		RunE: func(cmd *cobra.Command, _ []string) error { return cmd.Help() },
	}
	cmd.AddCommand(&cobra.Command{
		Use:   "install",
		Short: "set the hooks here; a hook that is there runs first",
		Args:  exactly(0, "no arguments"),
		RunE:  func(cmd *cobra.Command, _ []string) error { return a.installHooks(cmd.Context()) },
	}, newHookRun(a), &cobra.Command{
		Use:   "uninstall",
		Short: "take them out and put back what was there before",
		Args:  exactly(0, "no arguments"),
		RunE:  func(cmd *cobra.Command, _ []string) error { return a.uninstallHooks(cmd.Context()) },
	})
	return cmd
}

func (a *app) installHooks(ctx context.Context) error {
	repo, err := vcs.Open(ctx, vcs.Options{Dir: a.stand, Env: a.Env})
	if err != nil {
		return err
	}
	defer func() { _ = repo.Close() }()
	program, err := a.Program()
	if err != nil {
		return fmt.Errorf("the path of this program can not be told: %w", err)
	}
	return a.setHooks(ctx, repo, program, hooksFor(repo))
}

// setHooks writes the hooks for a program, after looking at all of them: either
// every hook can be set, or nothing is touched.
func (a *app) setHooks(ctx context.Context, repo *vcs.Repo, program string, names []string) error {
	dir := repo.HooksDir()
	if !within(dir, repo.CommonDir()) && !within(dir, repo.Top()) {
		return &sharedHooksError{dir: dir, lines: hookLines(program, names)}
	}
	for _, name := range names {
		if tracked(ctx, a, repo, filepath.Join(dir, name)) {
			return &trackedHookError{path: filepath.Join(dir, name), lines: hookLines(program, []string{name})}
		}
	}
	if err := os.MkdirAll(dir, 0o777); err != nil {
		return fmt.Errorf("the folder for hooks can not be made: %w", err)
	}
	for _, name := range names {
		kept, err := setHook(filepath.Join(dir, name), hookScript(name, program))
		if err != nil {
			return err
		}
		said := fmt.Sprintf("%s is set: %s\n", name, filepath.Join(dir, name))
		if kept {
			said += "  the hook that was there runs first: " + filepath.Join(dir, name+keptSuffix) + "\n"
		}
		if _, err := fmt.Fprint(a.Out, said); err != nil {
			return err
		}
	}
	return nil
}

// setHook writes one hook. One that is not ours is kept beside it and chained,
// once ours is written and has only to take its place.
func setHook(path, script string) (kept bool, err error) {
	const program = 0o755
	old, err := os.ReadFile(path)
	if err != nil && !errors.Is(err, fs.ErrNotExist) {
		return false, fmt.Errorf("the hook that is there can not be read: %w", err)
	}
	foreign := err == nil && !bytes.Contains(old, []byte(hookMark))
	ours, err := writePart(vcs.FolderAside(filepath.Dir(path)), path, []byte(script))
	defer func() { ours.drop() }()
	if err == nil {
		err = os.Chmod(ours.file, program)
	}
	if err != nil {
		return false, fmt.Errorf("%s is unchanged: %w", path, err)
	}
	if foreign {
		if err := keepHook(path, path+keptSuffix); err != nil {
			return false, err
		}
	}
	return exists(path + keptSuffix), ours.settle(program)
}

// keepHook gives a hook a second name, and leaves the first until ours takes it: a
// program that is killed in between leaves a hook in force, and the next one goes
// on from there.
func keepHook(path, kept string) error {
	if exists(kept) {
		one, err := os.Stat(path)
		other, otherErr := os.Stat(kept)
		if err == nil && otherErr == nil && os.SameFile(one, other) {
			return nil
		}
		return fmt.Errorf("%s is not ours, and %s is already taken: join the two by hand first", path, kept)
	}
	err := os.Link(path, kept)
	if err != nil {
		err = os.Rename(path, kept) // no second names here
	}
	if err != nil {
		return fmt.Errorf("the hook that is there can not be kept: %w", err)
	}
	return nil
}

func exists(path string) bool {
	_, err := os.Lstat(path)
	return err == nil
}

func (a *app) uninstallHooks(ctx context.Context) error {
	repo, err := vcs.Open(ctx, vcs.Options{Dir: a.stand, Env: a.Env})
	if err != nil {
		return err
	}
	defer func() { _ = repo.Close() }()
	return a.unsetHooks(repo)
}

// unsetHooks takes out every hook that is ours. Of those that are not, the ones
// that could be are named.
func (a *app) unsetHooks(repo *vcs.Repo) error {
	for _, name := range everyHook() {
		path := filepath.Join(repo.HooksDir(), name)
		said, err := unsetHook(path)
		if err != nil {
			return err
		}
		if said == hookAbsent && !slices.Contains(hooksFor(repo), name) {
			continue
		}
		if _, err := fmt.Fprintf(a.Out, "%s %s: %s\n", name, said, path); err != nil {
			return err
		}
	}
	return nil
}

// hookAbsent is said of a hook that nobody set.
const hookAbsent = "was not set"

func unsetHook(path string) (said string, err error) {
	text, err := os.ReadFile(path)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return hookAbsent, nil
	case err != nil:
		return "", fmt.Errorf("the hook can not be read: %w", err)
	case !bytes.Contains(text, []byte(hookMark)):
		return "is not ours and stays", nil
	}
	if err := os.Rename(path+keptSuffix, path); err == nil {
		return "is again what it was", nil
	} else if !errors.Is(err, fs.ErrNotExist) {
		return "", fmt.Errorf("the former hook can not be put back: %w", err)
	}
	if err := os.Remove(path); err != nil {
		return "", fmt.Errorf("the hook can not be taken out: %w", err)
	}
	return "is taken out", nil
}

// within says whether a path lies in a folder, links followed.
func within(path, folder string) bool {
	if folder == "" {
		return false
	}
	rel, err := filepath.Rel(settled(folder), settled(path))
	return err == nil && rel != ".." && !strings.HasPrefix(rel, ".."+string(filepath.Separator))
}

// settled follows the links in as much of a path as exists.
func settled(path string) string {
	if followed, err := filepath.EvalSymlinks(path); err == nil {
		return followed
	}
	if parent := filepath.Dir(path); parent != path {
		return filepath.Join(settled(parent), filepath.Base(path))
	}
	return path
}

// tracked says whether git tracks a file, so that it belongs to everybody who
// clones the repository.
func tracked(ctx context.Context, a *app, repo *vcs.Repo, path string) bool {
	if !within(path, repo.Top()) || within(path, repo.CommonDir()) {
		return false
	}
	_, err := a.git(ctx, repo.Top(), "ls-files", "--error-unmatch", "--", path)
	return err == nil
}

// sharedHooksError says that the hooks folder serves other repositories too.
type sharedHooksError struct{ dir, lines string }

// Error is the sentence.
func (e *sharedHooksError) Error() string {
	return fmt.Sprintf("core.hooksPath names %s, which serves other repositories too; nothing was changed. Add to the hooks there: %s", e.dir, e.lines)
}

// trackedHookError says that the hook is a file of the repository itself.
type trackedHookError struct{ path, lines string }

// Error is the sentence.
func (e *trackedHookError) Error() string {
	return fmt.Sprintf("%s is tracked by git and belongs to everybody; nothing was changed. Add to it yourself: %s", e.path, e.lines)
}
