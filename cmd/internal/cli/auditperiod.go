package cli

import (
	"context"
	"errors"
	"slices"
	"strings"

	"homerun/diffreport/audit"
	"homerun/schema"
	"homerun/schema/vcs"
)

// auditPeriod is the commits that an audit is about.
type auditPeriod struct {
	// name is what the report calls it, rng and last are the range and its last commit
	// as the user wrote them.
	name, rng, last string
	base, head      vcs.Commit
	// branch is the one that the user named the last commit by, if any.
	branch    string
	protected bool
	// commits are newest first, before those that lie right before them.
	commits, before []vcs.Commit
}

// period finds the ends of a range, which the report calls by a name of its own.
func (s *source) period(ctx context.Context, rng, name string) (*auditPeriod, error) {
	from, to, isRange := strings.Cut(rng, "..")
	if !isRange {
		from, to = "", rng
	}
	if strings.HasPrefix(to, ".") {
		return nil, &usageError{"audit takes no range with three dots", "write BASE..HEAD"}
	}
	p := &auditPeriod{name: name, rng: rng, last: orHead(to)}
	var err error
	if p.head, err = s.repo.Resolve(ctx, p.last); err == nil && isRange {
		p.base, err = s.repo.Resolve(ctx, orHead(from))
	}
	return p, err
}

// list reads the commits of a period.
func (s *source) list(ctx context.Context, p *auditPeriod) error {
	o := vcs.LogOptions{From: p.head.ID}
	if p.base.ID != "" {
		o.Not = []string{p.base.ID}
	}
	for c, err := range s.repo.Log(ctx, o) {
		if err != nil {
			return err
		}
		p.commits = append(p.commits, c)
	}
	if len(p.commits) == 0 {
		return &usageError{"there are no commits in " + schema.Quote(p.rng), "write BASE..HEAD with the older commit first"}
	}
	if err := s.changes(ctx, p.commits); err != nil {
		return err
	}
	if p.branch = s.app.branchNamed(ctx, p.last); p.branch != "" {
		held, none := s.app.protected(ctx)
		p.protected = none == nil && held.cover("refs/heads/"+p.branch)
	}
	return s.outside(ctx, p)
}

// changes fills in what commits changed.
func (s *source) changes(ctx context.Context, commits []vcs.Commit) error {
	ids := make([]string, len(commits))
	for i := range commits {
		ids[i] = commits[i].ID
	}
	changed, err := s.repo.Changes(ctx, ids)
	if err != nil {
		return err
	}
	for i := range commits {
		commits[i].Changed = changed[i].Changed
	}
	return nil
}

// outside reads the commits that lie right before the period, the base first.
func (s *source) outside(ctx context.Context, p *auditPeriod) error {
	inside := make(map[string]bool, len(p.commits))
	for _, c := range p.commits {
		inside[c.ID] = true
	}
	var ids []string
	for _, c := range p.commits {
		for _, parent := range c.Parents {
			if !inside[parent] && !slices.Contains(ids, parent) {
				ids = append(ids, parent)
			}
		}
	}
	slices.Sort(ids)
	for _, id := range ids {
		c, err := s.repo.Resolve(ctx, id)
		if err != nil {
			return err
		}
		p.before = append(p.before, c)
	}
	return nil
}

// earlier is a commit or tag of the past: what the user calls it, and its id or
// what is to be looked up.
type earlier struct {
	Name   string `json:"name"`
	Commit string `json:"commit"`
}

// lost looks earlier commits or tags up, and finds what they lead to and the last
// commit does not. One that is not here any more is lost as a whole.
func (s *source) lost(ctx context.Context, head vcs.Commit, formerly []earlier) (found []audit.Earlier, list []audit.Lost, err error) {
	for _, e := range formerly {
		c, err := s.repo.Resolve(ctx, e.Commit)
		if err != nil && !errors.Is(err, vcs.ErrUnknownRevision) && !errors.Is(err, vcs.ErrMissingObject) {
			return nil, nil, err
		}
		found = append(found, audit.Earlier{Name: e.Name, Commit: c.ID})
		l := audit.Lost{Ref: e.Name, Commit: c.ID}
		if c.ID != "" {
			if err := s.left(ctx, &l, head); err != nil {
				return nil, nil, err
			}
		}
		if c.ID == "" || len(l.Commits) > 0 {
			list = append(list, l)
		}
	}
	return found, list, nil
}

// left lists the commits that are lost.
func (s *source) left(ctx context.Context, l *audit.Lost, head vcs.Commit) error {
	for c, err := range s.repo.Log(ctx, vcs.LogOptions{From: l.Commit, Not: []string{head.ID}, Changes: true}) {
		if err != nil {
			return err
		}
		l.Commits = append(l.Commits, revisionOf(c))
		if touchesRecords(c) {
			l.Records++
		}
	}
	return nil
}

// branchNamed is the branch that a name for a commit stands for, or empty. The name
// was looked up before, so it is one that git takes for a commit.
func (a *app) branchNamed(ctx context.Context, rev string) string {
	said, err := a.git(ctx, a.stand, "rev-parse", "--verify", "--quiet", "--symbolic-full-name", "--end-of-options", rev)
	if err != nil {
		return "" // a date, say, is no name of git's
	}
	if name, is := branchOf(strings.TrimSpace(said)); is {
		return name
	}
	return ""
}
