package cli

import (
	"context"
	"maps"
	"path"
	"slices"

	"homerun/diffreport/audit"
	"homerun/lint/again"
	"homerun/lint/rules"
	"homerun/schema"
	"homerun/schema/plant"
	"homerun/schema/unit"
	"homerun/schema/vcs"
)

// An auditYard holds the records of one commit at a time, with what the rules found
// there, and goes from commit to commit by what differs between them.
type auditYard struct {
	*auditWalk
	at  *auditStand
	day unit.Date
	// entries are all files of records of the repository at the commit, read the
	// files as they were read.
	entries map[string]vcs.Entry
	read    map[string]*schema.File
	// folders are the folders with a plant, by how many files make them one.
	folders map[string]bool
	// dir is the folder of the plant that is audited, nowhere where there is none.
	dir      string
	standing *again.Standing
	feed     *auditFeed
}

func newAuditYard(w *auditWalk, period *auditPeriod) *auditYard {
	y := &auditYard{auditWalk: w, entries: make(map[string]vcs.Entry), read: make(map[string]*schema.File), folders: make(map[string]bool)}
	y.standing = y.fresh("")
	y.feed = newAuditFeed(w.source, period, func(c vcs.Commit) bool { return !w.kept.has(keptKey(c.ID, periodCommit)) })
	return y
}

func (y *auditYard) close() { y.feed.close() }

// nowhere is the folder of a plant that is not there.
const nowhere = ""

// fresh is a standing without records.
func (y *auditYard) fresh(dir string) *again.Standing {
	o := again.Options{Dir: dir, Rules: rules.All(), Known: ruleNames()}
	if y.by == audit.ByToday {
		o.Head = y.like.Entry.Record
	}
	return again.New(o)
}

// clear takes every record away.
func (y *auditYard) clear(day unit.Date) error {
	y.at = nil
	clear(y.entries)
	clear(y.read)
	clear(y.folders)
	y.day = day
	_, err := y.step(y.whole(nowhere), nil)
	return err
}

// to goes to a commit, and tells what differs from where it was: nothing where it was
// at that commit before, and returns to what it found there.
func (y *auditYard) to(ctx context.Context, s *auditState) (*again.Step, error) {
	if y.at == s.stand && y.day == s.day {
		return &again.Step{}, nil
	}
	files, known := y.at.way(s.stand)
	if !known {
		var err error
		if files, err = y.tree(ctx, s.stand.id); err != nil {
			return nil, err
		}
	}
	y.at, y.day = s.stand, s.day
	changed, err := y.enter(ctx, files)
	if err != nil {
		return nil, err
	}
	return y.step(y.settle(changed), s.mark)
}

// tree lists all files of a commit, and those that are there and not in it.
func (y *auditYard) tree(ctx context.Context, id string) (map[string]vcs.Entry, error) {
	entries, err := y.repo.Tree(ctx, id)
	if err != nil {
		return nil, err
	}
	files := make(map[string]vcs.Entry, len(entries))
	for p := range y.entries {
		files[p] = vcs.Entry{Path: p}
	}
	for _, e := range entries {
		if isRecords(e) {
			files[e.Path] = e
		}
	}
	return files, nil
}

// enter reads the files that differ, and returns their paths.
func (y *auditYard) enter(ctx context.Context, files map[string]vcs.Entry) ([]string, error) {
	var wanted []vcs.Entry
	var changed []string
	for _, p := range slices.Sorted(maps.Keys(files)) {
		e := files[p]
		was, there := y.entries[p]
		if there && was.ID == e.ID && was.Mode == e.Mode || !there && e.ID == "" {
			continue
		}
		changed = append(changed, p)
		if there {
			y.feed.left(was, y.read[p])
		}
		if e.ID != "" {
			wanted = append(wanted, e)
			continue
		}
		delete(y.entries, p)
		delete(y.read, p)
	}
	read, err := y.feed.files(ctx, wanted)
	if err != nil {
		return nil, err
	}
	for i, e := range wanted {
		y.entries[e.Path], y.read[e.Path] = e, read[i]
	}
	return changed, nil
}

// step makes the standing that of the plant at the commit, or returns to a mark of it;
// mark is nil where it was not there before.
func (y *auditYard) step(changes []again.Change, mark *again.Mark) (*again.Step, error) {
	if known, err := y.standing.Return(changes, mark); known {
		return &again.Step{}, err
	}
	return y.standing.Step(changes, y.day)
}

// settle finds what changes in the files of the plant, of those that differ.
func (y *auditYard) settle(changed []string) []again.Change {
	moved := false
	for _, p := range changed {
		if path.Base(p) == schema.PlantFile {
			moved = true
			if _, there := y.entries[p]; there {
				y.folders[path.Dir(p)] = true
			} else {
				delete(y.folders, path.Dir(p))
			}
		}
	}
	dir := y.folder()
	if dir == nowhere || dir != y.dir || moved {
		return y.whole(dir)
	}
	var changes []again.Change
	for _, p := range changed {
		if y.owner(p) == y.dir {
			changes = append(changes, again.Change{Path: p, File: y.read[p]})
		}
	}
	return changes
}

// whole looks at all files: what makes a folder a plant has changed.
func (y *auditYard) whole(dir string) []again.Change {
	files := make(map[string]*schema.File)
	for p, f := range y.read {
		if dir != nowhere && y.owner(p) == dir {
			files[p] = f
		}
	}
	y.dir = dir
	var changes []again.Change
	for _, p := range y.standing.Files() {
		if files[p] == nil {
			changes = append(changes, again.Change{Path: p})
		}
	}
	for _, p := range slices.Sorted(maps.Keys(files)) {
		if y.standing.File(p) != files[p] {
			changes = append(changes, again.Change{Path: p, File: files[p]})
		}
	}
	y.standing.SetDir(dir)
	return changes
}

// owner is the folder of the plant that a file belongs to.
func (y *auditYard) owner(file string) string {
	for dir := path.Dir(file); ; dir = path.Dir(dir) {
		if y.folders[dir] {
			return dir
		}
		if dir == "." || dir == "/" {
			return nowhere
		}
	}
}

// folder finds the plant that is audited among those at the commit: by its name, or
// else by its folder.
func (y *auditYard) folder() string {
	if len(y.folders) == 1 && y.folders[y.like.Dir] {
		return y.like.Dir
	}
	for _, d := range slices.Sorted(maps.Keys(y.folders)) {
		if y.name(d) == y.like.Name() {
			return d
		}
	}
	if y.folders[y.like.Dir] {
		return y.like.Dir
	}
	return nowhere
}

// name is what the plant in a folder is called.
func (y *auditYard) name(dir string) string {
	var heads []*schema.File
	for p, f := range y.read {
		if y.owner(p) != dir {
			continue
		}
		if entries := headsOf(f); len(entries) > 0 {
			heads = append(heads, &schema.File{Path: p, Entries: entries})
		}
	}
	return plant.Build(dir, heads).Name()
}

// headsOf are the plant records of a file.
func headsOf(f *schema.File) []schema.Entry {
	var heads []schema.Entry
	for _, e := range f.Entries {
		if e.Kind.Name == schema.KindPlant {
			heads = append(heads, e)
		}
	}
	return heads
}

// tell notes the waivers of the commit, and how many mistakes keep parts of it from
// being read.
func (y *auditYard) tell(f *auditFact) {
	entries := y.standing.Waivers()
	for _, e := range entries {
		if last, ok := schema.WaiverExpires.In(e.Record); ok {
			f.Expiries = append(f.Expiries, dateText(last))
		}
	}
	f.keepWaivers(waiversOf(entries))
	f.Unread = y.standing.Problems()
}
