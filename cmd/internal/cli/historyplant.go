package cli

import (
	"context"
	"fmt"
	"path"
	"slices"
	"strconv"
	"strings"

	"homerun/schema"
	"homerun/schema/plant"
	"homerun/schema/vcs"
)

// plantOf finds the plant whose history is told, at the commit to look back from.
// Of the one plant of a repository only the file that names it is read.
func (s *source) plantOf(ctx context.Context, rev, label string) (vcs.Commit, *plant.Plant, error) {
	commit, err := s.repo.Resolve(ctx, rev)
	if err != nil {
		return commit, nil, err
	}
	entries, err := s.repo.Tree(ctx, commit.ID)
	if err != nil {
		return commit, nil, err
	}
	heads := slices.DeleteFunc(slices.Clone(entries), func(e vcs.Entry) bool { return path.Base(e.Path) != schema.PlantFile })
	if len(heads) == 1 && s.app.plantFlag == "" && s.repo.Prefix() == "" {
		if p, bad := s.outline(ctx, heads[0]); bad != nil || p != nil {
			return commit, p, bad
		}
	}
	snap, err := s.snapshot(ctx, ofCommit(commit), entries)
	if err != nil {
		return commit, nil, err
	}
	now, err := snap.holding(label)
	return commit, now, err
}

// outline is a plant of nothing but its own record, nil where its file has none.
func (s *source) outline(ctx context.Context, e vcs.Entry) (*plant.Plant, error) {
	if !e.Regular() {
		return nil, nil
	}
	text, err := s.repo.Blob(ctx, e.ID)
	if err != nil {
		return nil, err
	}
	file := s.reader.ReadPart(e.Path, string(text), func(block string) bool {
		return strings.HasPrefix(strings.TrimLeft(block, " \t"), schema.KindPlant)
	})
	p := plant.Build(path.Dir(e.Path), []*schema.File{file})
	if p.Entry.Record == nil || p.Label == "" {
		return nil, nil
	}
	return p, nil
}

// holding finds the plant that has the label now. Where none has, the label may
// be one of the past, which a single plant can still be asked for.
func (snap *snapshot) holding(label string) (*plant.Plant, error) {
	if holder, _, is := portNamed(label); is && !snap.has(label) {
		label = holder
	}
	var found []*plant.Plant
	for _, p := range snap.Plants {
		if _, ok := p.Find(label); ok {
			found = append(found, p)
		}
	}
	switch {
	case len(found) == 1:
		return found[0], nil
	case len(found) == 0 && len(snap.Plants) == 1:
		return snap.Plants[0], nil
	}
	return snap.one()
}

func (snap *snapshot) has(label string) bool {
	return slices.ContainsFunc(snap.Plants, func(p *plant.Plant) bool {
		_, ok := p.Find(label)
		return ok
	})
}

// portNamed reads a label with the number of a port behind it.
func portNamed(text string) (holder string, port int64, ok bool) {
	cut := strings.LastIndexByte(text, ':')
	if cut < 1 {
		return "", 0, false
	}
	n, err := strconv.ParseUint(text[cut+1:], 10, 31)
	return text[:cut], int64(n), err == nil && n > 0
}

// neverThere says that no commit knows the label, with the nearest one.
func (s *source) neverThere(ctx context.Context, commit vcs.Commit, now *plant.Plant, label string) error {
	snap, err := s.commit(ctx, commit)
	if err != nil {
		return err
	}
	next := "labels stand in quotes behind the kind of record, as on the wall"
	if p := counterpart(snap, now); p != nil {
		if near := p.Nearest(label); near != "" {
			next = "did you mean " + schema.Printable(near) + "?"
		}
	}
	return &usageError{fmt.Sprintf("%s: nothing was ever called %s", now.Name(), schema.Quote(label)), next}
}
