package vcs

import (
	"context"
	"errors"
	"fmt"
	"iter"
	"strings"
	"sync"
)

// commands reads with git's own commands: right for every form of repository that git can read.
type commands struct {
	git   *runner
	place place

	mu             sync.Mutex
	sizes, objects *batch
}

func newCommands(git *runner, at place) *commands {
	return &commands{
		git: git, place: at,
		sizes:   &batch{git: git, args: []string{"cat-file", "--batch-check"}},
		objects: &batch{git: git, args: []string{"cat-file", "--batch"}},
	}
}

// resolve asks the long-lived cat-file, which takes one revision where other commands would take a range or option.
func (p *commands) resolve(ctx context.Context, rev string) (string, error) {
	p.mu.Lock()
	defer p.mu.Unlock()
	head, err := p.sizes.ask(ctx, rev+"^{commit}")
	switch {
	case err != nil:
		return "", err
	case head.status == "":
		return head.id, nil
	case head.status == "ambiguous":
		return "", fmt.Errorf("%s: %w: the short id fits several objects", rev, ErrUnknownRevision)
	case rev == "@" || strings.HasPrefix(rev, "HEAD") || strings.HasPrefix(rev, "@{") || strings.HasPrefix(rev, "@~"):
		if err := p.unborn(ctx); err != nil {
			return "", fmt.Errorf("%s: %w", rev, err)
		}
	}
	return "", fmt.Errorf("%s: %w", rev, p.unknown(ErrUnknownRevision))
}

// unborn tells a HEAD without any commit from one whose commit is lost; nil when HEAD has a commit.
func (p *commands) unborn(ctx context.Context) error {
	head, err := p.sizes.ask(ctx, "HEAD")
	if err != nil || head.status == "" {
		return err
	}
	_, err = p.git.output(ctx, "rev-parse", "--verify", "--quiet", "HEAD")
	var failed *gitError
	switch {
	case err == nil:
		return ErrMissingObject
	case errors.As(err, &failed):
		return ErrNoCommit
	}
	return err
}

// unknown adds why history may be missing.
func (p *commands) unknown(err error) error {
	if p.place.shallow {
		return fmt.Errorf("%w %w", err, ErrShallow)
	}
	return err
}

func (p *commands) commit(ctx context.Context, id string) ([]byte, error) {
	return p.object(ctx, id, "commit")
}

func (p *commands) blob(ctx context.Context, id string) ([]byte, error) {
	return p.object(ctx, id, "blob")
}

// object asks for kind and size first, so that nothing too large is ever read.
func (p *commands) object(ctx context.Context, id, kind string) ([]byte, error) {
	if !hexID(id) {
		return nil, fmt.Errorf("%q is no object id: %w", id, ErrMissingObject)
	}
	p.mu.Lock()
	defer p.mu.Unlock()
	head, err := p.sizes.ask(ctx, id)
	if err == nil {
		err = head.fits(kind)
	}
	if err != nil {
		return nil, err
	}
	return p.objects.read(ctx, head)
}

// blobs runs two commands of its own, so that a caller may use the repository while it ranges: one for all sizes,
// then one for the contents that may be read.
func (p *commands) blobs(ctx context.Context, ids []string) iter.Seq2[Blob, error] {
	return func(yield func(Blob, error) bool) {
		heads, err := p.git.sizes(ctx, ids)
		if err != nil {
			yield(Blob{}, err)
			return
		}
		contents := newStream(ctx, p.git, heads)
		defer contents.stop()
		for _, head := range heads {
			data, err := contents.next(head)
			if errors.Is(err, errBroken) {
				yield(Blob{}, contents.failure(err))
				return
			}
			if !yield(Blob{ID: head.asked, Data: data}, err) {
				return
			}
		}
	}
}

func (p *commands) tree(ctx context.Context, commit string) ([]Entry, error) {
	if !hexID(commit) {
		return nil, fmt.Errorf("%q is no object id: %w", commit, ErrMissingObject)
	}
	var entries []Entry
	err := p.git.list(ctx, func(line string) error {
		e, err := parseListed(line)
		entries = append(entries, e)
		return err
	}, "ls-tree", "-r", "-z", "--full-tree", commit)
	if err != nil {
		return nil, err
	}
	return entries, nil
}

func (p *commands) index(ctx context.Context) ([]Entry, error) {
	if err := intact(p.place.index, p.place.objectFormat); err != nil {
		return nil, fmt.Errorf("index %s: %w", p.place.index, err)
	}
	var entries []Entry
	empty := false
	err := p.git.list(ctx, func(line string) error {
		e, err := parseStaged(line)
		empty = empty || e.ID == emptyBlob(p.place.objectFormat)
		entries = append(entries, e)
		return err
	}, "ls-files", "--stage", "-z", "--full-name", "--", ":/")
	if err == nil && empty {
		err = p.markIntended(ctx, entries)
	}
	if err != nil {
		return nil, err
	}
	return entries, nil
}

// markIntended tells announced paths from files that are really empty. "ls-files" prints both alike; against an
// empty commit, git lists only what has content to commit.
func (p *commands) markIntended(ctx context.Context, entries []Entry) error {
	staged := map[string]bool{}
	meta := true
	err := p.git.list(ctx, func(token string) error {
		if !meta {
			staged[token] = true
		}
		meta = !meta
		return nil
	}, "diff-index", "--cached", "--ita-invisible-in-index", "--raw", "-z", "--no-renames", "--no-relative", emptyTree(p.place.objectFormat))
	for i := range entries {
		e := &entries[i]
		e.IntentToAdd = e.Stage == 0 && e.ID == emptyBlob(p.place.objectFormat) && !staged[e.Path]
	}
	return err
}

// emptyBlob is the id of a file without content: SHA-1 or SHA-256 of the header "blob 0" and NUL.
func emptyBlob(objectFormat string) string {
	if objectFormat == "sha256" {
		return "473a0f4c3be8a93681a267e3b1e9a7dcda1185436fe141f7749120a303721813"
	}
	return "e69de29bb2d1d6434b8b29ae775ad8c2e48c5391"
}

// emptyTree is the id of a folder without files, which git knows without storing it.
func emptyTree(objectFormat string) string {
	if objectFormat == "sha256" {
		return "6ef19b41225c5369f1c104d45d8d85efa9b057b53b14b4b9b939dd74decc5321"
	}
	return "4b825dc642cb6eb9a060e54bf8d69288fbee4904"
}

func (p *commands) close() error {
	p.mu.Lock()
	defer p.mu.Unlock()
	p.sizes.stop()
	p.objects.stop()
	return nil
}
