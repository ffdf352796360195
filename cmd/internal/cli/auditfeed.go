package cli

import (
	"context"
	"slices"

	"homerun/schema"
	"homerun/schema/vcs"
)

// An auditFeed reads the files of a period ahead, in the order in which its commits
// are audited.
type auditFeed struct {
	*source
	stop context.CancelFunc
	next chan fedFile
	// order is the place of each file among those that are read, come how many came.
	order map[fileKey]int
	come  int
}

type fedFile struct {
	key  fileKey
	file *schema.File
}

// ahead is how many files are read before they are asked for, mostFiles how many
// are remembered besides those at the commit at hand, fewBlocks how many blocks of
// text are remembered at least.
const (
	ahead     = 64
	mostFiles = 2048
	fewBlocks = 40_000
)

func newAuditFeed(s *source, period *auditPeriod, judged func(vcs.Commit) bool) *auditFeed {
	s.reader.Bound(max(fewBlocks, 2*s.blocks()))
	f := &auditFeed{source: s, next: make(chan fedFile, ahead), order: make(map[fileKey]int)}
	var wanted []fileKey
	for _, c := range slices.Backward(period.commits) {
		if !judged(c) {
			continue
		}
		for _, d := range c.Changed {
			key := fileKey{d.Path, d.After}
			if _, twice := f.order[key]; d.After == "" || twice || s.files[key] != nil || !isRecords(vcs.Entry{Path: d.Path, Mode: d.AfterMode}) || d.AfterMode == vcs.ModeSymlink {
				continue
			}
			f.order[key] = len(wanted)
			wanted = append(wanted, key)
		}
	}
	ctx, stop := context.WithCancel(context.Background())
	f.stop = stop
	if len(wanted) == 0 {
		close(f.next)
		return f
	}
	go f.run(ctx, wanted)
	return f
}

// run reads the files. What fails here is left out, and fails where it is asked for.
func (f *auditFeed) run(ctx context.Context, wanted []fileKey) {
	defer close(f.next)
	ids := make([]string, len(wanted))
	for i, key := range wanted {
		ids[i] = key.id
	}
	n := 0
	for blob, err := range f.repo.Blobs(ctx, ids) {
		if err != nil && blob.ID == "" || n >= len(wanted) {
			return
		}
		key := wanted[n]
		n++
		fed := fedFile{key: key}
		if err == nil {
			fed.file = f.reader.ReadFile(key.path, string(blob.Data))
		}
		select {
		case f.next <- fed:
		case <-ctx.Done():
			return
		}
	}
}

// blocks is how many blocks of text the files that were read hold.
func (s *source) blocks() int {
	n := 0
	for _, f := range s.files {
		n += len(f.Entries)
	}
	return n
}

// files are the files of some entries, read ahead or read now.
func (f *auditFeed) files(ctx context.Context, entries []vcs.Entry) ([]*schema.File, error) {
	for _, e := range entries {
		f.await(fileKey{e.Path, e.ID})
	}
	read, err := f.read(ctx, entries)
	if len(f.source.files) > mostFiles {
		clear(f.source.files)
	}
	return read, err
}

// await takes what was read ahead until a file has come.
func (f *auditFeed) await(key fileKey) {
	place, fed := f.order[key]
	for fed && f.come <= place {
		next, more := <-f.next
		if !more {
			f.come = len(f.order)
			return
		}
		f.come++
		if next.file != nil {
			f.source.files[next.key] = next.file
		}
	}
}

func (f *auditFeed) close() {
	f.stop()
	for range f.next { // lets the reading end
	}
}
