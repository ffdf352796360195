package cli

import (
	"context"
	"maps"
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
	// first are the files that were read before the audit, older those that were met
	// before the ones that the source has.
	first, older map[fileKey]*schema.File
}

// A fedFile is a file to be read and then the one that was; gone are those that are
// no more where it is.
type fedFile struct {
	key  fileKey
	gone []string
	file *schema.File
}

// ahead is how many files are read before they are asked for, mostFiles how many
// are remembered at least of those that were met, fewBytes how much text.
const (
	ahead     = 64
	mostFiles = 256
	fewBytes  = 1 << 20
)

func newAuditFeed(s *source, period *auditPeriod, judged func(vcs.Commit) bool) *auditFeed {
	s.reader.Bound(max(fewBytes, s.text()/4))
	f := &auditFeed{source: s, next: make(chan fedFile, ahead), order: make(map[fileKey]int), first: maps.Clone(s.files)}
	wanted := f.wanted(period, judged)
	ctx, stop := context.WithCancel(context.Background())
	f.stop = stop
	go f.run(ctx, wanted)
	return f
}

// wanted lists the files of the commits that are judged. What a commit takes away is
// told with its first file: its blocks are then known where they were moved to.
func (f *auditFeed) wanted(period *auditPeriod, judged func(vcs.Commit) bool) []fedFile {
	var list []fedFile
	var gone []string
	for _, c := range slices.Backward(period.commits) {
		if !judged(c) {
			continue
		}
		for _, d := range c.Changed {
			if d.After == "" {
				gone = append(gone, d.Path)
			}
		}
		for _, d := range c.Changed {
			key := fileKey{d.Path, d.After}
			_, twice := f.order[key]
			if d.After == "" || twice || f.first[key] != nil || !isRecords(vcs.Entry{Path: d.Path, Mode: d.AfterMode}) || d.AfterMode == vcs.ModeSymlink {
				continue
			}
			f.order[key] = len(list)
			list = append(list, fedFile{key: key, gone: gone})
			gone = nil
		}
	}
	return list
}

// run reads the files. What fails here is left out, and fails where it is asked for.
func (f *auditFeed) run(ctx context.Context, wanted []fedFile) {
	defer close(f.next)
	ids := make([]string, len(wanted))
	for i, w := range wanted {
		ids[i] = w.key.id
	}
	versions := f.reader.Versions()
	_ = f.repo.Pour(ctx, ids, func(i int, data []byte) error {
		fed := &wanted[i]
		for _, file := range fed.gone {
			versions.Forget(file)
		}
		if data != nil {
			fed.file = versions.Read(fed.key.path, data)
		}
		select {
		case f.next <- *fed:
			fed.file = nil
			return nil
		case <-ctx.Done():
			return context.Cause(ctx)
		}
	})
}

// text is how many bytes of records the files that were read hold.
func (s *source) text() int {
	n := 0
	for _, f := range s.files {
		for _, e := range f.Entries {
			n += len(e.Text())
		}
	}
	return n
}

// files are the files of some entries, read ahead or read now.
func (f *auditFeed) files(ctx context.Context, entries []vcs.Entry) ([]*schema.File, error) {
	for _, e := range entries {
		key := fileKey{e.Path, e.ID}
		f.await(key)
		if was := f.older[key]; was != nil {
			f.source.files[key] = was
		}
	}
	read, err := f.read(ctx, entries)
	f.age()
	return read, err
}

// left tells that a file stands no more at the commit at hand. Merges go back to the
// commits that branches left from, and may ask for it again.
func (f *auditFeed) left(e vcs.Entry, file *schema.File) {
	if e.Mode != vcs.ModeSymlink { // the same bytes may be records where they are no link
		f.source.files[fileKey{e.Path, e.ID}] = file
		f.age()
	}
}

// age forgets the files that were met before the last so many.
func (f *auditFeed) age() {
	if len(f.source.files) > len(f.first)+mostFiles {
		f.older, f.source.files = f.source.files, maps.Clone(f.first)
	}
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
	f.source.files = f.first
}
