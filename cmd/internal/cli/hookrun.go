package cli

import (
	"bufio"
	"context"
	"errors"
	"fmt"
	"io"
	"path"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"homerun/lint"
	"homerun/schema"
	"homerun/schema/vcs"
)

// newHookRun is the way in for the hooks that git tells something: it takes what
// git gives them.
func newHookRun(a *app) *cobra.Command {
	return &cobra.Command{
		Use:   "run NAME [ARGUMENT...]",
		Short: "do what a hook does, with what git gives it",
		Long: `Do what a hook does, for hooks that somebody else runs: pre-push, pre-receive,
update or commit-msg, with the arguments and the input that git gives them. For
pre-commit and pre-merge-commit that is: git homerun lint --hook`,
		DisableFlagParsing: true,
		RunE: func(cmd *cobra.Command, args []string) error {
			return a.runHook(cmd, args)
		},
	}
}

func (a *app) runHook(cmd *cobra.Command, args []string) error {
	if len(args) == 1 && (args[0] == "-h" || args[0] == "--help") {
		return cmd.Help()
	}
	ctx := cmd.Context()
	name := ""
	if len(args) > 0 {
		name, args = args[0], args[1:]
	}
	switch {
	case name == hookPreCommit || name == hookPreMergeCommit:
		return a.lintHook(ctx)
	case name == hookPrePush && len(args) == 2:
		return a.prePush(ctx, args[0])
	case name == hookPreReceive && len(args) == 0:
		return a.preReceive(ctx)
	case name == hookUpdate && len(args) == 3:
		return a.receive(ctx, []update{{ref: args[0], old: args[1], fresh: args[2]}})
	case name == hookCommitMsg && len(args) == 1:
		return a.commitMessage(ctx, args[0])
	case slices.Contains(everyHook(), name):
		return &usageError{"the hook " + name + " was not given what git gives it", `hand its arguments on: git homerun hook run ` + name + ` "$@"`}
	}
	return &usageError{"there is no hook " + schema.Quote(name), "the hooks are " + strings.Join(everyHook(), ", ")}
}

func (a *app) lintHook(ctx context.Context) error {
	return a.lint(ctx, lintFlags{hook: true, format: "text", most: 200})
}

// An update is one ref that a push moves. No id but zeros stands for a ref that
// is not there.
type update struct{ ref, old, fresh string }

func isNoID(id string) bool { return strings.Trim(id, "0") == "" }

// updates reads what git tells a hook, a ref a line.
func updates(in io.Reader, read func(words []string) update, words int) ([]update, error) {
	const longest = 64 << 10
	var all []update
	lines := bufio.NewScanner(in)
	lines.Buffer(nil, longest)
	for lines.Scan() {
		line := strings.Fields(lines.Text())
		if len(line) == 0 {
			continue
		}
		if len(line) != words {
			return nil, &usageError{"this is not what git tells a hook: " + schema.Quote(lines.Text()), "the command is for hooks: see git homerun hook -h"}
		}
		all = append(all, read(line))
	}
	return all, lines.Err()
}

// prePush checks what is pushed against what the other side has.
func (a *app) prePush(ctx context.Context, remote string) error {
	all, err := updates(a.In, func(w []string) update { return update{ref: w[2], old: w[3], fresh: w[1]} }, 4)
	if err != nil {
		return err
	}
	return a.acceptable(ctx, all, func(context.Context, *vcs.Repo) (vcs.Held, error) { return vcs.Held{Remote: remote}, nil })
}

// preReceive checks what arrives for the protected branches.
func (a *app) preReceive(ctx context.Context) error {
	all, err := updates(a.In, func(w []string) update { return update{ref: w[2], old: w[0], fresh: w[1]} }, 3)
	if err != nil {
		return err
	}
	return a.receive(ctx, all)
}

func (a *app) receive(ctx context.Context, all []update) error {
	protected, err := a.protected(ctx)
	if err != nil {
		return err
	}
	all = slices.DeleteFunc(all, func(u update) bool { return !protected.cover(u.ref) })
	return a.acceptable(ctx, all, protected.held)
}

// holdings say what counts as there already for a branch that is new. On a
// server those are the protected branches: what was only pushed to another has
// not been checked.
type holdings func(context.Context, *vcs.Repo) (vcs.Held, error)

// patterns name branches, as path.Match reads them; a single star is every one.
type patterns []string

func (p patterns) held(ctx context.Context, repo *vcs.Repo) (vcs.Held, error) {
	all, err := repo.Branches(ctx)
	if err != nil {
		return vcs.Held{}, err
	}
	return vcs.Held{Refs: slices.DeleteFunc(all, func(ref string) bool { return !p.cover(ref) })}, nil
}

// cover says whether a ref is a branch that one of the patterns means.
func (p patterns) cover(ref string) bool {
	name, ok := branchOf(ref)
	return ok && slices.ContainsFunc(p, func(one string) bool {
		matched, err := path.Match(one, name)
		return one == "*" || err == nil && matched
	})
}

// branchOf is a ref's name as a branch; ok is false for any other ref.
func branchOf(ref string) (name string, ok bool) { return strings.CutPrefix(ref, "refs/heads/") }

// protected are the branches that take no new nonconformity.
func (a *app) protected(ctx context.Context) (patterns, error) {
	said, err := a.git(ctx, a.stand, "config", "--null", "--get-all", "homerun.protected")
	if err == nil {
		return strings.Split(strings.TrimSuffix(said, "\x00"), "\x00"), nil
	}
	if said, err = a.git(ctx, a.stand, "symbolic-ref", "HEAD"); err != nil {
		return nil, fmt.Errorf("no branch is protected: %w", err)
	}
	name, _ := branchOf(strings.TrimSpace(said))
	return patterns{globless(name)}, nil
}

// globless is a branch's name as a pattern for itself.
func globless(name string) string {
	return strings.NewReplacer(`\`, `\\`, `*`, `\*`, `?`, `\?`, `[`, `\[`).Replace(name)
}

// acceptable holds each branch that a push moves against what was there, and
// refuses the push for what is new or worse.
func (a *app) acceptable(ctx context.Context, all []update, held holdings) error {
	objected := false
	for _, u := range all {
		if _, branch := branchOf(u.ref); !branch || isNoID(u.fresh) {
			continue
		}
		worse, err := a.worsens(ctx, u, held)
		if err != nil {
			return err
		}
		objected = objected || worse
	}
	if objected {
		return errObjected
	}
	return nil
}

// worsens checks one branch.
func (a *app) worsens(ctx context.Context, u update, held holdings) (bool, error) {
	src, err := a.open(ctx)
	if err != nil {
		return false, err
	}
	defer src.close()
	src.all = true
	snap, _, err := src.at(ctx, u.fresh)
	if err != nil {
		return false, err
	}
	bases, err := a.before(ctx, src, u, held)
	if err != nil {
		return false, err
	}
	if err := leftBehind(snap, bases); err != nil {
		return false, err
	}
	branch, _ := branchOf(u.ref)
	snap.Title = schema.Printable(branch) + ", " + snap.Title
	o := lintFlags{hook: true, introduced: true, format: "text", most: 200}
	var reports []*lint.Report
	worse := false
	for _, p := range snap.Plants {
		rep, err := lintAgainst(p, bases, snap, onlyNew)
		if err != nil {
			return false, err
		}
		reports = append(reports, rep)
		worse = worse || objects(rep, o)
	}
	return worse, a.showReports(ctx, src, reports, snap, o)
}

// before reads what a branch is compared with: its own state before the push,
// and for a new branch what the other side has already of its history. Where
// there is nothing, everything is new.
func (a *app) before(ctx context.Context, src *source, u update, held holdings) ([]*snapshot, error) {
	revs := []string{u.old}
	known := !isNoID(u.old)
	if known {
		_, err := src.repo.Resolve(ctx, u.old)
		switch {
		case errors.Is(err, vcs.ErrUnknownRevision), errors.Is(err, vcs.ErrMissingObject):
			known = false // somebody else's commit, which was not fetched
		case err != nil:
			return nil, err
		}
	}
	if !known {
		there, err := held(ctx, src.repo)
		if err != nil {
			return nil, err
		}
		if revs, err = src.repo.Frontier(ctx, u.fresh, there); err != nil {
			return nil, err
		}
	}
	if len(revs) == 0 {
		return []*snapshot{nil}, nil
	}
	bases := make([]*snapshot, 0, len(revs))
	for _, rev := range revs {
		base, err := a.baseline(ctx, src, rev)
		if err != nil {
			return nil, err
		}
		bases = append(bases, base)
	}
	return bases, nil
}
