package cli

import (
	"context"
	"errors"
	"fmt"
	"path"
	"slices"
	"strings"

	"homerun/schema"
	"homerun/schema/plant"
	"homerun/schema/unit"
	"homerun/schema/vcs"
)

// A source reads plants from a repository: from the working tree, the index or
// any commit. Files and blocks that it has read once are not read again.
type source struct {
	app    *app
	repo   *vcs.Repo
	reader *schema.Reader
	files  map[fileKey]*schema.File
	// all takes every plant of the repository, wherever the user stands.
	all bool
}

type fileKey struct{ path, id string }

// A snapshot is the plants of one state of the repository.
type snapshot struct {
	// Name is "worktree", "index" or a commit's id; Title is for people.
	Name, Title string
	// Date is the day by which waivers are judged.
	Date   unit.Date
	Plants []*plant.Plant
	// several says that there are more plants than one, asked for or not.
	several bool
	// entries are the plants' files, for telling whether two snapshots of a
	// plant are of the same bytes.
	entries map[string][]vcs.Entry
	// strays are files of records that belong to no plant.
	strays []string
}

func (a *app) open(ctx context.Context) (*source, error) {
	a.progress.say("reading the records")
	repo, err := vcs.Open(ctx, vcs.Options{Dir: a.stand, Env: a.Env})
	if err != nil {
		return nil, err
	}
	return &source{app: a, repo: repo, reader: schema.NewReader(), files: make(map[fileKey]*schema.File)}, nil
}

func (s *source) close() { _ = s.repo.Close() } // nothing was written

// worktree reads the plants as they stand in the folder, saved but perhaps not
// staged.
func (s *source) worktree(ctx context.Context) (*snapshot, error) {
	entries, err := s.repo.Worktree(ctx)
	if err != nil {
		return nil, err
	}
	today, err := s.app.today()
	if err != nil {
		return nil, err
	}
	return s.snapshot(ctx, &snapshot{Name: "worktree", Title: "working tree", Date: today}, entries)
}

// index reads the plants as the next commit will hold them.
func (s *source) index(ctx context.Context) (*snapshot, error) {
	snap, build, err := s.staged(ctx)
	if err != nil {
		return nil, err
	}
	build()
	return s.byLabel(snap)
}

// staged reads the files of the next commit, and returns what makes plants of them.
func (s *source) staged(ctx context.Context) (snap *snapshot, build func(), err error) {
	entries, err := s.repo.Index(ctx)
	if err != nil {
		return nil, nil, err
	}
	if snap, err = s.ofIndex(); err != nil {
		return nil, nil, err
	}
	build, err = s.gather(ctx, snap, entries)
	return snap, build, err
}

// ofIndex begins the snapshot of the index.
func (s *source) ofIndex() (*snapshot, error) {
	today, err := s.app.today()
	return &snapshot{Name: "index", Title: "index", Date: today}, err
}

// at reads the plants as a commit holds them, and judges waivers by its date.
func (s *source) at(ctx context.Context, rev string) (*snapshot, vcs.Commit, error) {
	commit, err := s.repo.Resolve(ctx, rev)
	if err != nil {
		return nil, vcs.Commit{}, err
	}
	snap, err := s.commit(ctx, commit)
	return snap, commit, err
}

func (s *source) commit(ctx context.Context, c vcs.Commit) (*snapshot, error) {
	entries, err := s.repo.Tree(ctx, c.ID)
	if err != nil {
		return nil, err
	}
	return s.snapshot(ctx, ofCommit(c), entries)
}

// ofCommit begins the snapshot of a commit.
func ofCommit(c vcs.Commit) *snapshot {
	return &snapshot{Name: c.ID, Title: "commit " + short(c.ID), Date: unit.DateOf(c.Committer.When)}
}

// parents are the commits before one, by their ids. Where a clone was cut off
// there were some, and not to know them is no reason to take everything for new.
func (s *source) parents(ctx context.Context, rev string) ([]string, error) {
	commit, err := s.repo.Resolve(ctx, rev)
	if err == nil && commit.Boundary {
		err = fmt.Errorf("what commit %s changed can not be told: its parents are not %w", short(commit.ID), vcs.ErrShallow)
	}
	return commit.Parents, err
}

func short(id string) string { return id[:min(len(id), 10)] }

// snapshot makes the plants among the entries that the user asked for.
func (s *source) snapshot(ctx context.Context, snap *snapshot, entries []vcs.Entry) (*snapshot, error) {
	build, err := s.gather(ctx, snap, entries)
	if err != nil {
		return nil, err
	}
	build()
	return s.byLabel(snap)
}

// gather reads the files of the plants among the entries that the user asked
// for, and returns what makes plants of them. That asks nothing of the source,
// so that the next files can be read meanwhile.
func (s *source) gather(ctx context.Context, snap *snapshot, entries []vcs.Entry) (build func(), err error) {
	paths := make([]string, 0, len(entries))
	byPath := make(map[string]vcs.Entry)
	for _, e := range entries {
		if !schema.IsRecords(e.Path) || e.IntentToAdd || e.Mode == vcs.ModeSubmodule {
			continue
		}
		if _, again := byPath[e.Path]; !again {
			paths = append(paths, e.Path)
		}
		byPath[e.Path] = e
	}
	folders, strays := schema.Folders(paths)
	snap.several = len(folders) > 1
	folders, err = s.choose(folders, strays, snap.Title)
	if err != nil {
		return nil, err
	}
	snap.entries, snap.strays = make(map[string][]vcs.Entry), strays
	files := make([][]*schema.File, len(folders))
	for n, folder := range folders {
		list := make([]vcs.Entry, len(folder.Files))
		for i, file := range folder.Files {
			list[i] = byPath[file]
		}
		if files[n], err = s.read(ctx, list); err != nil {
			return nil, err
		}
		snap.entries[folder.Dir] = list
	}
	return func() {
		for n, folder := range folders {
			snap.Plants = append(snap.Plants, plant.Build(folder.Dir, files[n]))
		}
	}, nil
}

// choose keeps the plants below the folder where the user stands, or the one
// that holds that folder, or with --plant the one in a named folder.
func (s *source) choose(folders []schema.Folder, strays []string, title string) ([]schema.Folder, error) {
	if len(folders) == 0 {
		if s.all {
			return nil, nil
		}
		if len(strays) > 0 {
			return nil, &noPlantError{message: fmt.Sprintf("%s: there is no plant.hcl, so %s belongs to no plant", title, schema.Printable(strays[0])), next: noPlantNext, records: true}
		}
		return nil, &noPlantError{message: title + ": there are no cable records here: no plant.hcl", next: noPlantNext}
	}
	if s.all || s.app.plantFlag != "" {
		return folders, nil
	}
	here := s.repo.Prefix()
	if here == "" {
		return folders, nil
	}
	if i := holding(folders, here); i >= 0 {
		return folders[i : i+1], nil
	}
	var below []schema.Folder
	for _, f := range folders {
		if strings.HasPrefix(f.Dir+"/", here+"/") {
			below = append(below, f)
		}
	}
	if len(below) == 0 {
		return nil, &noPlantError{
			message: fmt.Sprintf("%s: no plant holds the folder %s, nor lies in it", title, schema.Printable(here)),
			next:    "go to the plant's folder, or write a plant here: git homerun init", records: true,
		}
	}
	return below, nil
}

// holding finds the nearest plant whose folder holds a folder.
func holding(folders []schema.Folder, dir string) int {
	for {
		if i := slices.IndexFunc(folders, func(f schema.Folder) bool { return f.Dir == dir }); i >= 0 {
			return i
		}
		if dir == "." {
			return -1
		}
		dir = path.Dir(dir)
	}
}

// byLabel applies --plant.
func (s *source) byLabel(snap *snapshot) (*snapshot, error) {
	want := s.app.plantFlag
	if want == "" || s.all {
		return snap, nil
	}
	var names []string
	for _, p := range snap.Plants {
		if p.Name() == want || p.Dir == path.Clean(want) {
			snap.Plants = []*plant.Plant{p}
			return snap, nil
		}
		names = append(names, p.Name())
	}
	next := didYouMean(want, names, "the plants are "+strings.Join(names, ", "))
	return nil, &usageError{fmt.Sprintf("%s: there is no plant %s", snap.Title, schema.Quote(want)), next}
}

// one insists on a single plant, for commands that are about one.
func (snap *snapshot) one() (*plant.Plant, error) {
	if len(snap.Plants) == 1 {
		return snap.Plants[0], nil
	}
	var names []string
	for _, p := range snap.Plants {
		names = append(names, p.Name())
	}
	return nil, &usageError{"the repository holds several plants: " + strings.Join(names, ", "), "choose one with --plant, or go to its folder"}
}

// read reads files, those it knows from memory.
func (s *source) read(ctx context.Context, entries []vcs.Entry) ([]*schema.File, error) {
	files := make([]*schema.File, len(entries))
	wanted := &unread{where: make(map[string][]int)}
	for i, e := range entries {
		switch known := s.files[fileKey{e.Path, e.ID}]; {
		case e.Mode == vcs.ModeSymlink:
			files[i] = refused(e.Path, "is a symbolic link, and no link is followed", "put the records themselves here")
		case e.ID != "" && known != nil:
			files[i] = known
		case e.Stage > 0:
			files[i] = refused(e.Path, "is not merged yet", "settle the conflict, then git add it")
		case e.ID == "":
			text, bad, err := s.saved(e)
			if err != nil {
				return nil, err
			}
			if files[i] = bad; bad == nil {
				wanted.add(i, e.Path, text)
			}
		default:
			if wanted.where[e.ID] == nil {
				wanted.ids = append(wanted.ids, e.ID)
			}
			wanted.where[e.ID] = append(wanted.where[e.ID], i)
		}
	}
	if err := s.fetch(ctx, entries, files, wanted); err != nil {
		return nil, err
	}
	for n, file := range s.reader.ReadFiles(wanted.texts) {
		i := wanted.at[n]
		files[i] = file
		if id := entries[i].ID; id != "" {
			s.files[fileKey{entries[i].Path, id}] = file
		}
	}
	return files, nil
}

// unread is what has yet to be read: texts with the place of their file, and
// blobs with the places of theirs.
type unread struct {
	texts []schema.Document
	at    []int
	ids   []string
	where map[string][]int
}

func (u *unread) add(i int, file, text string) {
	u.texts = append(u.texts, schema.Document{Path: file, Text: text})
	u.at = append(u.at, i)
}

// fetch gets the blobs that are wanted.
func (s *source) fetch(ctx context.Context, entries []vcs.Entry, files []*schema.File, wanted *unread) error {
	for blob, err := range s.repo.Blobs(ctx, wanted.ids) {
		if err != nil && !errors.Is(err, vcs.ErrTooLarge) {
			return err
		}
		for _, i := range wanted.where[blob.ID] {
			if err != nil {
				files[i] = tooLarge(entries[i].Path)
				continue
			}
			wanted.add(i, entries[i].Path, string(blob.Data))
		}
	}
	return nil
}

// saved gets the text of a file of the working tree, or the file that says why
// it is not read.
func (s *source) saved(e vcs.Entry) (text string, bad *schema.File, err error) {
	content, err := s.repo.ReadFile(e.Path)
	switch {
	case errors.Is(err, vcs.ErrTooLarge):
		return "", tooLarge(e.Path), nil
	case errors.Is(err, vcs.ErrOutside), errors.Is(err, vcs.ErrNotFile):
		return "", refused(e.Path, "is no plain file below the plant's folder", "put the records themselves here"), nil
	}
	return string(content), nil, err
}

func tooLarge(file string) *schema.File {
	return refused(file, fmt.Sprintf("is larger than %d MiB", vcs.MaxBlob>>20), "divide it into several files, a floor or a bundle each")
}

// refused is a file that was not read, with the reason among its problems.
func refused(file, why, next string) *schema.File {
	return &schema.File{Path: file, Problems: []schema.Problem{{
		Code: schema.Unreadable, At: schema.Location{Path: file, Line: 1, Column: 1, EndLine: 1, EndColumn: 1},
		Message: schema.Printable(path.Base(file)) + " " + why, Next: next,
	}}}
}
