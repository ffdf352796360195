package cli

import (
	"context"
	"errors"
	"slices"
	"strings"
	"sync"
	"time"

	"homerun/diffreport"
	"homerun/schema/plant"
	"homerun/schema/vcs"
)

// span is the two states that an order leads between, and the commits that do.
type span struct {
	base, head *snapshot
	// baseID is the commit compared with; empty before the first.
	baseID  string
	commits []diffreport.Commit
}

// span reads both ends of a range; without one, what is staged.
func (s *source) span(ctx context.Context, rng string) (*span, error) {
	if rng == "" {
		return s.stagedSpan(ctx)
	}
	base, head, err := s.ends(ctx, rng)
	if err != nil {
		return nil, err
	}
	sp := &span{}
	if base.ID == "" {
		if sp.head, err = s.commit(ctx, head); err != nil {
			return nil, err
		}
		return sp, s.between(ctx, sp, head, nil)
	}
	sp.baseID = base.ID
	if sp.base, sp.head, err = s.both(ctx, base, head); err != nil {
		return nil, err
	}
	return sp, s.between(ctx, sp, head, []string{base.ID})
}

// both reads two commits, the one while plants are made of the other. One of
// them may have no plant: then everything is new, or everything is taken out.
func (s *source) both(ctx context.Context, was, is vcs.Commit) (base, head *snapshot, err error) {
	entries, err := s.repo.Tree(ctx, is.ID)
	if err != nil {
		return nil, nil, err
	}
	head = ofCommit(is)
	build, noHead := s.gather(ctx, head, entries)
	if noHead != nil && !isBare(noHead) {
		return nil, nil, noHead
	}
	var made sync.WaitGroup
	if noHead == nil {
		made.Go(build)
	}
	base, noBase := s.commit(ctx, was)
	made.Wait()
	if base, err = oneBare(base, noBase, noHead); err != nil || noHead != nil {
		return base, head, err
	}
	head, err = s.byLabel(head)
	return base, head, err
}

// oneBare is the base, nil where it has no plant. Where the head has none
// either, there is nothing to compare.
func oneBare(base *snapshot, noBase, noHead error) (*snapshot, error) {
	switch {
	case noBase == nil:
		return base, nil
	case !isNoPlant(noBase):
		return nil, noBase
	}
	return nil, noHead
}

func (s *source) stagedSpan(ctx context.Context) (*span, error) {
	head, noHead := s.index(ctx)
	if noHead != nil && !isBare(noHead) {
		return nil, noHead
	}
	base, commit, noBase := s.at(ctx, "HEAD")
	if isNoCommit(noBase) {
		return &span{head: head}, noHead
	}
	base, err := oneBare(base, noBase, noHead)
	if err != nil {
		return nil, err
	}
	if noHead != nil {
		head, err = s.ofIndex()
	}
	return &span{base: base, head: head, baseID: commit.ID}, err
}

// ends resolves a range. The base is zero where before it there was nothing.
func (s *source) ends(ctx context.Context, rng string) (base, head vcs.Commit, err error) {
	var from, to string
	common := false
	switch {
	case strings.Contains(rng, "..."):
		from, to, _ = strings.Cut(rng, "...")
		common = true
	case strings.Contains(rng, ".."):
		from, to, _ = strings.Cut(rng, "..")
	default:
		return s.single(ctx, rng)
	}
	if head, err = s.repo.Resolve(ctx, orHead(to)); err != nil {
		return base, head, err
	}
	if base, err = s.start(ctx, orHead(from)); err != nil || base.ID == "" || !common {
		return base, head, err
	}
	base, err = s.fork(ctx, base.ID, head.ID)
	return base, head, err
}

func orHead(rev string) string {
	if rev == "" {
		return "HEAD"
	}
	return rev
}

// start resolves the left of a range. A day is meant with all that happened on
// it, so the records are taken as they were the evening before: the zero commit
// where the history begins later.
func (s *source) start(ctx context.Context, rev string) (vcs.Commit, error) {
	day, err := time.Parse(time.DateOnly, rev)
	if err != nil || s.named(ctx, rev) != "" {
		return s.repo.Resolve(ctx, rev)
	}
	base, err := s.repo.Resolve(ctx, day.AddDate(0, 0, -1).Format(time.DateOnly))
	if errors.Is(err, vcs.ErrUnknownRevision) {
		return vcs.Commit{}, nil
	}
	return base, err
}

// named is the full name of a branch or tag; empty for anything else.
func (s *source) named(ctx context.Context, rev string) string {
	if strings.HasPrefix(rev, "-") {
		return ""
	}
	full, err := s.app.git(ctx, s.app.stand, "rev-parse", "--quiet", "--verify", "--symbolic-full-name", rev)
	if err != nil {
		return "" // what it is not, Resolve says better
	}
	return strings.TrimSpace(full)
}

// single resolves what is not a range: a branch is what it adds since it left
// HEAD, a commit what it changed.
func (s *source) single(ctx context.Context, rev string) (base, head vcs.Commit, err error) {
	if head, err = s.repo.Resolve(ctx, rev); err != nil {
		return base, head, err
	}
	if name := s.named(ctx, rev); rev != "HEAD" && rev != "@" && (strings.HasPrefix(name, "refs/heads/") || strings.HasPrefix(name, "refs/remotes/")) {
		base, err = s.fork(ctx, "HEAD", head.ID)
		if err != nil || base.ID != head.ID {
			return base, head, err
		}
	}
	if len(head.Parents) == 0 {
		return vcs.Commit{}, head, nil
	}
	base, err = s.repo.Resolve(ctx, head.Parents[0])
	return base, head, err
}

// fork is the commit at which two histories parted.
func (s *source) fork(ctx context.Context, a, b string) (vcs.Commit, error) {
	id, err := s.repo.MergeBase(ctx, a, b)
	if err != nil {
		return vcs.Commit{}, err
	}
	return s.repo.Resolve(ctx, id)
}

// between lists the commits of the range that touch records, oldest first.
func (s *source) between(ctx context.Context, sp *span, head vcs.Commit, not []string) error {
	var dirs []string
	for _, snap := range []*snapshot{sp.base, sp.head} {
		if snap == nil {
			continue
		}
		for _, p := range snap.Plants {
			dirs = append(dirs, p.Dir)
		}
	}
	if slices.Contains(dirs, ".") {
		dirs = nil // a plant at the top: every path
	}
	for c, err := range s.repo.Log(ctx, vcs.LogOptions{From: head.ID, Not: not, Paths: dirs}) {
		if err != nil {
			return err
		}
		sp.commits = append(sp.commits, diffreport.Commit{ID: c.ID, Author: c.Author.Name, Subject: c.Subject, Body: c.Body, Time: c.Author.When})
	}
	slices.Reverse(sp.commits)
	return nil
}

// pairs are the plants of both ends; one that is only at one end has nil at
// the other.
func (sp *span) pairs() [][2]*plant.Plant {
	var pairs [][2]*plant.Plant
	met := make(map[*plant.Plant]bool)
	for _, p := range sp.head.Plants {
		before := counterpart(sp.base, p)
		met[before] = true
		pairs = append(pairs, [2]*plant.Plant{before, p})
	}
	if sp.base != nil {
		for _, p := range sp.base.Plants {
			if !met[p] {
				pairs = append(pairs, [2]*plant.Plant{p, nil})
			}
		}
	}
	return pairs
}
