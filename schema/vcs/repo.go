package vcs

import (
	"context"
	"errors"
	"fmt"
	"os"
	"sync"
	"sync/atomic"
	"time"
)

// Reader names one of the two ways to read objects and index.
type Reader int

const (
	// ReaderAuto reads in this process where that is known to be right, and asks git for everything else.
	ReaderAuto Reader = iota
	// ReaderGoGit reads objects and index in this process only; what it cannot read is ErrUnfit or an error.
	ReaderGoGit
	// ReaderGit asks git's plumbing only.
	ReaderGit
)

// String names the reader.
func (r Reader) String() string {
	switch r {
	case ReaderAuto:
		return "auto"
	case ReaderGoGit:
		return "go-git"
	case ReaderGit:
		return "git"
	}
	return fmt.Sprintf("reader %d", int(r))
}

// Missing says what to do about objects that a partial clone has not fetched.
type Missing int

const (
	// MissingRefuse gives ErrMissingObject: nothing is fetched, no transport of the repository's choosing is started.
	MissingRefuse Missing = iota
	// MissingFetch lets git fetch them from the remote the repository names.
	MissingFetch
)

// Options say where and how to read.
type Options struct {
	// Dir is the folder the user stands in.
	Dir string
	// Env is the whole environment for git, as "NAME=value". GIT_DIR, GIT_INDEX_FILE and the like are honoured.
	Env []string
	// Git is the git program; "" looks for "git" on the process's PATH.
	Git string
	// Reader insists on one reader.
	Reader Reader
	// Missing rules over objects that are not here.
	Missing Missing
	// Zone is the time zone for dates that name none; nil is UTC.
	Zone *time.Location
}

// Repo is one open repository. Its methods may be called from several goroutines.
type Repo struct {
	git    *runner
	place  place
	form   Form
	zone   *time.Location
	reader reader
	// near reads in this process, nil where that is not known to be right.
	near *goGit

	// quick reads from packs that are in memory, once a history was asked for.
	quickOnce sync.Once
	quick     atomic.Pointer[quick]

	rootOnce sync.Once
	root     *os.Root
	rootErr  error
}

// Open finds the repository that the folder and environment of o belong to, asks git whether it may be read, and
// chooses a reader. Errors: ErrNoGit, ErrNotRepository, ErrUnsafe, ErrUnfit, each with git's own sentence.
func Open(ctx context.Context, o Options) (*Repo, error) {
	git := newRunner(o)
	at, err := discover(ctx, git)
	if err != nil {
		return nil, err
	}
	git.useIndex(at.index)
	r := &Repo{git: git, place: at, zone: o.Zone}
	if r.zone == nil {
		r.zone = time.UTC
	}
	if err := r.choose(o.Reader); err != nil {
		return nil, err
	}
	return r, nil
}

// choose examines the form of the repository and sets up the readers for it.
func (r *Repo) choose(want Reader) error {
	form, unfit := examine(r.place, r.git)
	r.form = form
	sure := newCommands(r.git, r.place)
	switch {
	case want == ReaderGit, want == ReaderAuto && unfit != nil:
		r.form.Reader, r.reader = ReaderGit, sure
	case unfit != nil:
		return fmt.Errorf("%s: %w: %w", r.place.gitDir, ErrUnfit, unfit)
	case want == ReaderGoGit:
		r.near = newGoGit(r.place, 0)
		r.form.Reader, r.reader = ReaderGoGit, r.near
	default:
		r.near = newGoGit(r.place, fewFolders)
		r.form.Reader, r.reader = ReaderGoGit, &fallback{fast: r.near, sure: sure}
	}
	return nil
}

// Close ends the children and closes the files that the repository holds.
func (r *Repo) Close() error {
	err := r.reader.close()
	r.rootOnce.Do(func() { r.rootErr = os.ErrClosed })
	if r.root != nil {
		err = errors.Join(err, r.root.Close())
	}
	return err
}

// Top is the absolute path of the top of the work tree, and "" where there is none.
func (r *Repo) Top() string { return r.place.top }

// GitDir is the absolute path of this work tree's own git folder.
func (r *Repo) GitDir() string { return r.place.gitDir }

// CommonDir is the absolute path of the git folder that linked work trees share.
func (r *Repo) CommonDir() string { return r.place.commonDir }

// HooksDir is the absolute path of the folder that git runs hooks from, core.hooksPath included.
func (r *Repo) HooksDir() string { return r.place.hooks }

// Prefix is the folder below Top that the user stands in, with slashes and none at the end; "" is Top itself. Git
// moves hooks and aliases to the top and says in GIT_PREFIX where the user was, which is honoured there.
func (r *Repo) Prefix() string { return r.place.prefix }

// Form says what sort of repository this is.
func (r *Repo) Form() Form { return r.form }
