package trail

import (
	"context"
	"path"
	"slices"
	"sync/atomic"

	"homerun/schema"
	"homerun/schema/vcs"
)

func isRecords(p string) bool { return schema.IsRecords(p) }

func regular(mode uint32) bool { return mode == vcs.ModeFile || mode == vcs.ModeExecutable }

// gather adds to the register what it does not know of the commits: ids are
// newest first.
func (t *Trail) gather(ctx context.Context, ids []string) error {
	missing := slices.DeleteFunc(slices.Clone(ids), func(id string) bool { return t.steps[id] != nil })
	if len(missing) == 0 {
		return nil
	}
	slices.Reverse(missing)
	commits, err := t.Repo.Changes(ctx, missing)
	if err != nil {
		return err
	}
	known := len(t.blobs)
	for i := range commits {
		t.take(&commits[i])
	}
	if err := t.readFrom(ctx, known); err != nil {
		return err
	}
	t.changed = true
	return nil
}

// readFrom reads every version from one number on.
func (t *Trail) readFrom(ctx context.Context, from int) error {
	wish := vcs.Reading{IDs: make([]string, len(t.blobs)), Like: make([]int32, len(t.blobs)), First: from}
	for i := range t.blobs {
		wish.IDs[i], wish.Like[i] = t.blobs[i].id, t.blobs[i].like
	}
	plants := t.plantFiles()
	var done atomic.Int64
	var tallies []tally
	wish.Begin = func(readers int) {
		done.Store(0)
		tallies = make([]tally, readers)
	}
	wish.Take = func(reader int, v *vcs.Version) error {
		b := &t.blobs[v.N]
		if b.base = int32(v.Base); plants.has(int32(v.N)) {
			b.mark = markOf(v.Text)
		}
		tallies[reader].take(v)
		t.told(int(done.Add(1)), len(t.blobs)-from)
		return nil
	}
	if err := t.Repo.Versions(ctx, wish); err != nil {
		return err
	}
	t.add(tallies)
	if from == 0 {
		t.fresh = t.index.size()
	}
	return nil
}

// plantFiles is the versions of files that make a folder a plant.
func (t *Trail) plantFiles() set {
	found := newSet(len(t.blobs))
	for _, s := range t.steps {
		for _, d := range s.deltas {
			if d.after != none && path.Base(t.paths[d.path]) == schema.PlantFile {
				found.add(d.after)
			}
		}
	}
	return found
}

func (t *Trail) told(done, of int) {
	if t.Progress != nil {
		t.Progress(done, of)
	}
}
