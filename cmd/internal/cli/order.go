package cli

import (
	"context"
	"io"
	"strings"

	"github.com/spf13/cobra"

	"homerun/diffreport"
	"homerun/diffreport/render"
	"homerun/lint"
	"homerun/schema/plant"
	"homerun/schema/vcs"
)

type orderFlags struct {
	staged         bool
	format, output string
}

func newOrder(a *app) *cobra.Command {
	var o orderFlags
	cmd := &cobra.Command{
		Use:   "order [BASE..HEAD | BASE...HEAD | COMMIT | --staged]",
		Short: "the work order for a change",
		Long: `Turn a change of the records into a work order: what moves, what is added,
exchanged, removed or relabelled, what is a correction on paper only, and the
steps on site in an order that works.

BASE..HEAD compares two commits, BASE...HEAD what HEAD adds since it left BASE,
COMMIT is the change that one commit made to its first parent, --staged what the
next commit will change. A commit may be named by a tag, branch or date.

The formats: text for a terminal or printer, markdown for a comment on a change,
html for one page with drawings that prints and reads on a telephone, sheet for a
spreadsheet, json for programs.`,
		Args: func(_ *cobra.Command, args []string) error {
			switch {
			case len(args) > 1:
				return &usageError{"order takes one range of commits", "write BASE..HEAD"}
			case (len(args) == 1) == o.staged:
				return &usageError{"order takes a range of commits, or --staged", "write BASE..HEAD, such as main..HEAD"}
			}
			return nil
		},
		RunE: func(cmd *cobra.Command, args []string) error {
			return a.order(cmd.Context(), strings.Join(args, ""), o)
		},
	}
	cmd.Flags().BoolVar(&o.staged, "staged", false, "what the next commit will change")
	cmd.Flags().StringVar(&o.format, "format", "text", "text, markdown, html, sheet or json")
	cmd.Flags().StringVar(&o.output, "output", "", "write to a file; one that is there is replaced")
	return cmd
}

// span is the two states that an order leads between, and the commits that do.
type span struct {
	base, head *snapshot
	// baseID is the commit compared with; empty before the first.
	baseID  string
	commits []diffreport.Commit
}

func (a *app) order(ctx context.Context, rng string, o orderFlags) error {
	write, err := a.orderWriter(ctx, o)
	if err != nil {
		return err
	}
	src, err := a.open(ctx)
	if err != nil {
		return err
	}
	defer src.close()
	sp, err := src.span(ctx, rng, o.staged)
	if err != nil {
		return err
	}
	var jobs []render.Job
	clash := false
	for _, pair := range sp.pairs() {
		order, err := sp.plan(pair[0], pair[1])
		if err != nil {
			return err
		}
		jobs = append(jobs, render.Job{Order: order, Base: pair[0], Head: pair[1]})
		clash = clash || !order.Executable
	}
	if err := a.handOver(ctx, src.repo, o.output, func(w io.Writer) error { return write(w, jobs) }); err != nil {
		return err
	}
	if clash {
		return errObjected
	}
	return nil
}

// span reads both ends of a range.
func (s *source) span(ctx context.Context, rng string, staged bool) (*span, error) {
	if staged {
		return s.stagedSpan(ctx)
	}
	base, head, err := s.ends(ctx, rng)
	if err != nil {
		return nil, err
	}
	sp := &span{}
	if sp.head, err = s.commit(ctx, head); err != nil {
		return nil, err
	}
	if base.ID == "" {
		return sp, s.between(ctx, sp, head, nil)
	}
	sp.baseID = base.ID
	if sp.base, err = s.commit(ctx, base); err != nil && !isNoPlant(err) {
		return nil, err
	}
	return sp, s.between(ctx, sp, head, []string{base.ID})
}

func (s *source) stagedSpan(ctx context.Context) (*span, error) {
	head, err := s.index(ctx)
	if err != nil {
		return nil, err
	}
	sp := &span{head: head}
	base, commit, err := s.at(ctx, "HEAD")
	switch {
	case err == nil:
		sp.base, sp.baseID = base, commit.ID
	case isNoPlant(err):
		sp.baseID = commit.ID
	case !isNoCommit(err):
		return nil, err
	}
	return sp, nil
}

// ends resolves a range. The base is zero for a first commit: before it there
// was nothing.
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
		return s.oneCommit(ctx, rng)
	}
	if head, err = s.repo.Resolve(ctx, orHead(to)); err != nil {
		return base, head, err
	}
	if base, err = s.repo.Resolve(ctx, orHead(from)); err != nil || !common {
		return base, head, err
	}
	id, err := s.repo.MergeBase(ctx, base.ID, head.ID)
	if err != nil {
		return base, head, err
	}
	base, err = s.repo.Resolve(ctx, id)
	return base, head, err
}

func orHead(rev string) string {
	if rev == "" {
		return "HEAD"
	}
	return rev
}

func (s *source) oneCommit(ctx context.Context, rev string) (base, head vcs.Commit, err error) {
	if head, err = s.repo.Resolve(ctx, rev); err != nil || len(head.Parents) == 0 {
		return base, head, err
	}
	base, err = s.repo.Resolve(ctx, head.Parents[0])
	return base, head, err
}

// between lists the commits of the range that touch records, oldest first.
func (s *source) between(ctx context.Context, sp *span, head vcs.Commit, not []string) error {
	var dirs []string // none, for a plant at the top, are all
	for _, p := range sp.head.Plants {
		if p.Dir == "." {
			dirs = nil
			break
		}
		dirs = append(dirs, p.Dir)
	}
	for c, err := range s.repo.Log(ctx, vcs.LogOptions{From: head.ID, Not: not, Paths: dirs}) {
		if err != nil {
			return err
		}
		sp.commits = append([]diffreport.Commit{{ID: c.ID, Author: c.Author.Name, Subject: c.Subject, Time: c.Author.When}}, sp.commits...)
	}
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

// plan works out one plant's order, with the findings that it brings and those
// that it settles.
func (sp *span) plan(before, after *plant.Plant) (diffreport.Order, error) {
	changes := diffreport.Compare(before, after, diffreport.Options{})
	introduced, cleared, err := sp.findings(before, after, changes)
	if err != nil {
		return diffreport.Order{}, err
	}
	return diffreport.Plan(before, after, changes, diffreport.PlanOptions{
		Base: sp.baseID, Head: sp.head.Name, Commits: sp.commits, Introduced: lines(introduced), Cleared: lines(cleared),
	}), nil
}

func (sp *span) findings(before, after *plant.Plant, changes []diffreport.Change) (introduced, cleared []lint.Finding, err error) {
	var stood, stands []lint.Finding
	for _, side := range []struct {
		p    *plant.Plant
		into *[]lint.Finding
	}{{before, &stood}, {after, &stands}} {
		if side.p == nil {
			continue
		}
		report, err := lintPlant(side.p, sp.head.Date)
		if err != nil {
			return nil, nil, err
		}
		*side.into = report.Findings
	}
	lint.Introduced(stood, stands, diffreport.Former(changes))
	introduced = chosenFindings(stands)
	// What is cleared is what the way back would introduce.
	lint.Introduced(stands, stood, diffreport.Latter(changes))
	return introduced, chosenFindings(stood), nil
}

func chosenFindings(all []lint.Finding) []lint.Finding {
	var some []lint.Finding
	for _, f := range all {
		if f.Introduced {
			some = append(some, f)
		}
	}
	return some
}

func lines(findings []lint.Finding) []diffreport.FindingLine {
	out := make([]diffreport.FindingLine, 0, len(findings))
	for i := range findings {
		f := &findings[i]
		line := diffreport.FindingLine{
			Rule: f.Rule, Severity: f.Severity.String(), Kind: f.Kind, Record: f.Record, Path: f.At.Path, Line: f.At.Line, Column: f.At.Column,
			Message: f.Message, Result: f.Result, Limit: f.Limit, Source: f.Source,
		}
		for _, t := range f.Working {
			line.Working = append(line.Working, diffreport.Term(t))
		}
		for _, n := range f.Related {
			line.Related = append(line.Related, diffreport.Place{Kind: n.Kind, Record: n.Label, Path: n.At.Path, Line: n.At.Line, Column: n.At.Column, Message: n.Message})
		}
		out = append(out, line)
	}
	return out
}
