package vcs

import (
	"context"
	"fmt"

	"github.com/go-git/go-git/v5/plumbing"
	"github.com/go-git/go-git/v5/plumbing/filemode"
	"github.com/go-git/go-git/v5/plumbing/object"
)

// tree walks the folders of a commit in stored order, which is the byte order of whole paths.
func (g *goGit) tree(ctx context.Context, commit string) ([]Entry, error) {
	text, err := g.commit(ctx, commit)
	if err != nil {
		return nil, err
	}
	c, _, err := parseCommit(commit, string(text))
	if err != nil {
		return nil, err
	}
	g.mu.Lock()
	defer g.mu.Unlock()
	w := treeWalk{ctx: ctx, from: g}
	if err := guard(func() error { return w.folder(plumbing.NewHash(c.Tree), "", 0) }); err != nil {
		return nil, fmt.Errorf("commit %s: %w", commit, err)
	}
	return w.entries, nil
}

// treeWalk gathers files. Depth and number are bounded: a few small objects can name each other so often that the
// whole would never end.
type treeWalk struct {
	ctx     context.Context
	from    *goGit
	folders int
	entries []Entry
}

func (w *treeWalk) folder(id plumbing.Hash, prefix string, depth int) error {
	if depth > maxDepth {
		return fmt.Errorf("folders nested deeper than %d: %w", maxDepth, ErrTooLarge)
	}
	if w.folders++; w.from.patience > 0 && w.folders > w.from.patience {
		return fmt.Errorf("more than %d folders: %w", w.from.patience, ErrUnfit)
	}
	if w.ctx.Err() != nil {
		return context.Cause(w.ctx)
	}
	stored, err := w.from.object(id, plumbing.TreeObject)
	if err != nil {
		return err
	}
	var tree object.Tree
	if err = tree.Decode(stored); err != nil {
		return fmt.Errorf("folder %q: %w", prefix, err)
	}
	for _, e := range tree.Entries {
		if e.Mode == filemode.Dir {
			err = w.folder(e.Hash, prefix+e.Name+"/", depth+1)
		} else {
			err = w.file(e, prefix)
		}
		if err != nil {
			return err
		}
	}
	return nil
}

func (w *treeWalk) file(e object.TreeEntry, prefix string) error {
	if len(w.entries) >= MaxEntries {
		return fmt.Errorf("more than %d files: %w", MaxEntries, ErrTooLarge)
	}
	w.entries = append(w.entries, Entry{Path: prefix + e.Name, ID: e.Hash.String(), Mode: canonical(e.Mode), Size: -1})
	return nil
}

// canonical maps the modes that old versions of git wrote to those that git shows today.
func canonical(mode filemode.FileMode) uint32 {
	switch m := uint32(mode); {
	case m&0o170000 == 0o100000 && m&0o100 != 0:
		return ModeExecutable
	case m&0o170000 == 0o100000:
		return ModeFile
	default:
		return m
	}
}
