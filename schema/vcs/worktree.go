package vcs

import (
	"context"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path"
	"path/filepath"
	"slices"
	"strings"
)

// Worktree lists what is in the work tree: tracked paths that exist, and paths neither tracked nor ignored, sorted
// by the bytes of their paths. A symbolic link is marked and not followed; a submodule that is checked out is one
// entry. Git skips folders that it may not list and only warns; then the error is ErrUnreadable with the names, and
// the entries are all the others. Error without a work tree: ErrNoWorktree.
func (r *Repo) Worktree(ctx context.Context) ([]Entry, error) {
	root, err := r.openRoot()
	if err != nil {
		return nil, err
	}
	paths, unread, err := r.listed(ctx)
	if err != nil {
		return nil, err
	}
	slices.Sort(paths)
	var entries []Entry
	for _, p := range slices.Compact(paths) {
		e, there, err := stat(root, p)
		if err != nil {
			unread = append(unread, err)
		}
		if there {
			entries = append(entries, e)
		}
	}
	if len(unread) > 0 {
		return entries, fmt.Errorf("%s: %w: %w", r.place.top, ErrUnreadable, errors.Join(unread...))
	}
	return entries, nil
}

// listed asks git which paths belong to the work tree, and which folders it could not list.
func (r *Repo) listed(ctx context.Context) (paths []string, unread []error, err error) {
	c, err := r.git.start(ctx, "ls-files", "-z", "--cached", "--others", "--exclude-standard", "--full-name", "--", ":/")
	if err != nil {
		return nil, nil, err
	}
	_ = c.in.Close()
	tokens := nulTokens(c.out)
	for tokens.Scan() && len(paths) <= MaxEntries {
		paths = append(paths, tokens.Text())
	}
	if tokens.Err() != nil || len(paths) > MaxEntries {
		c.stop()
		return nil, nil, errors.Join(fmt.Errorf("work tree: more than %d files: %w", MaxEntries, ErrTooLarge), tokens.Err())
	}
	if err := c.wait(ctx); err != nil {
		return nil, nil, err
	}
	for line := range strings.Lines(c.said.String()) {
		if what, found := strings.CutPrefix(strings.TrimSpace(line), "warning: could not open directory "); found {
			unread = append(unread, errors.New(what))
		}
	}
	return paths, unread, nil
}

// stat looks at one path without following a link at its end. A path that is gone, lies behind a link that leads
// out, or is now a folder is not there.
func stat(root *os.Root, name string) (Entry, bool, error) {
	local := filepath.FromSlash(strings.TrimSuffix(name, "/"))
	info, err := root.Lstat(local)
	switch {
	case errors.Is(err, fs.ErrPermission):
		return Entry{}, false, err
	case err != nil:
		return Entry{}, false, nil //nolint:nilerr // git too counts a path that cannot be looked at as deleted
	}
	e := Entry{Path: strings.TrimSuffix(name, "/"), Size: -1}
	switch mode := info.Mode(); {
	case mode.IsRegular() && mode.Perm()&0o100 != 0:
		e.Mode, e.Size = ModeExecutable, info.Size()
	case mode.IsRegular():
		e.Mode, e.Size = ModeFile, info.Size()
	case mode&fs.ModeSymlink != 0:
		e.Mode = ModeSymlink
	case mode.IsDir():
		e.Mode = ModeSubmodule
		_, err = root.Lstat(filepath.Join(local, ".git"))
		return e, err == nil, nil
	}
	return e, true, nil
}

// ReadFile reads a file of the work tree, given relative to its top with slashes. A link is followed as long as it
// stays inside. Errors, all with the path: ErrOutside, ErrNotFile, ErrTooLarge above MaxBlob, ErrNoWorktree, and
// what the system says, such as fs.ErrNotExist and fs.ErrPermission.
func (r *Repo) ReadFile(name string) ([]byte, error) {
	root, err := r.openRoot()
	if err != nil {
		return nil, err
	}
	if !filepath.IsLocal(filepath.FromSlash(name)) || strings.ContainsRune(name, 0) {
		return nil, fmt.Errorf("%q: %w", name, ErrOutside)
	}
	info, err := root.Stat(filepath.FromSlash(name))
	switch {
	case err != nil:
		return nil, fmt.Errorf("%q: %w", name, escaped(root, name, err))
	case !info.Mode().IsRegular():
		// Opening a pipe would wait for a writer for ever.
		return nil, fmt.Errorf("%q: %w", name, ErrNotFile)
	case info.Size() > MaxBlob:
		return nil, fmt.Errorf("%q: %d bytes, limit %d: %w", name, info.Size(), MaxBlob, ErrTooLarge)
	}
	file, err := root.Open(filepath.FromSlash(name))
	if err != nil {
		return nil, fmt.Errorf("%q: %w", name, err)
	}
	defer func() { _ = file.Close() }()
	data, err := io.ReadAll(io.LimitReader(file, MaxBlob+1))
	if err == nil && len(data) > MaxBlob {
		err = ErrTooLarge
	}
	if err != nil {
		return nil, fmt.Errorf("%q: %w", name, err)
	}
	return data, nil
}

// escaped finds out whether a path failed because a link on the way leads out of the tree: the system's own error
// for that has no name. Everything else is given back as it came.
func escaped(root *os.Root, name string, err error) error {
	if errors.Is(err, fs.ErrNotExist) || errors.Is(err, fs.ErrPermission) {
		return err
	}
	for p := name; p != "."; p = path.Dir(p) {
		if info, linkErr := root.Lstat(filepath.FromSlash(p)); linkErr == nil && info.Mode()&fs.ModeSymlink != 0 {
			return fmt.Errorf("%w: %w", ErrOutside, err)
		}
	}
	return err
}

// openRoot opens the top of the work tree once. Through it no path and no link can lead outside.
func (r *Repo) openRoot() (*os.Root, error) {
	if r.place.top == "" {
		return nil, ErrNoWorktree
	}
	r.rootOnce.Do(func() { r.root, r.rootErr = os.OpenRoot(r.place.top) })
	if r.rootErr != nil {
		return nil, fmt.Errorf("work tree: %w", r.rootErr)
	}
	return r.root, nil
}
