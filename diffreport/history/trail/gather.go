package trail

import (
	"context"
	"path"
	"runtime"
	"slices"
	"sync"
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
	commits, err := t.Repo.Commits(ctx, missing)
	if err != nil {
		return err
	}
	known := len(t.blobs)
	for i := range commits {
		t.take(&commits[i])
	}
	if err := t.pour(ctx, known); err != nil {
		return err
	}
	if known == 0 {
		t.fresh = len(t.spans)
	}
	t.changed = true
	return nil
}

// pour reads every version from one number on, by several gits side by side. Each
// has a time of its own, in the order of the history: git finds there what it has
// just unpacked, while the versions of one file by themselves cost it ten times
// as much.
func (t *Trail) pour(ctx context.Context, from int) error {
	size := (len(t.blobs) - from + gits(len(t.blobs)-from) - 1) / gits(len(t.blobs)-from)
	plants := t.plantFiles()
	var done atomic.Int64
	var readers []*chainReader
	var failed []error
	for range gits(len(t.blobs) - from) {
		readers, failed = append(readers, newChainReader()), append(failed, nil)
	}
	var wait sync.WaitGroup
	for i := range readers {
		first, last := min(from+i*size, len(t.blobs)), min(from+(i+1)*size, len(t.blobs))
		wait.Go(func() {
			failed[i] = t.pourPart(ctx, first, last, plants, readers[i], func() { t.told(int(done.Add(1)), len(t.blobs)-from) })
		})
	}
	wait.Wait()
	for i := range readers {
		if failed[i] != nil {
			return failed[i]
		}
		t.spans = joined(t.spans, readers[i].spans)
	}
	return nil
}

func (t *Trail) pourPart(ctx context.Context, first, last int, plants set, into *chainReader, done func()) error {
	ids := make([]string, 0, last-first)
	for b := first; b < last; b++ {
		ids = append(ids, t.blobs[b].id)
	}
	err := t.Repo.Pour(ctx, ids, func(n int, text []byte) error {
		v := &t.blobs[first+n]
		if plants.has(int32(first + n)) {
			v.mark = markOf(text)
		}
		into.take(v, text)
		if int(v.at) == len(t.chains[v.chain])-1 {
			into.end(v.chain)
		}
		done()
		return nil
	})
	into.endAll()
	slices.SortFunc(into.spans, compareSpans)
	return err
}

// gits is how many gits share the reading of n versions.
func gits(n int) int { return max(1, min(runtime.GOMAXPROCS(0), n/fewVersions)) }

// fewVersions is how many versions are read by one git before another is worth
// its start.
const fewVersions = 64

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
