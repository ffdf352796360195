package cli

import (
	"context"
	"fmt"
	"slices"
	"strings"
	"sync"

	"github.com/spf13/cobra"

	"homerun/lint"
	"homerun/schema"
	"homerun/schema/plant"
)

type lintFlags struct {
	nameFlags
	staged    bool
	at, since string
	// parents compares a commit with the ones before it.
	parents    bool
	introduced bool
	format     string
	output     string
	most       int
	hook       bool
}

func newLint(a *app) *cobra.Command {
	var o lintFlags
	cmd := &cobra.Command{
		Use:   "lint [--staged | --at REV] [--since REV] [--names | -z]",
		Short: "hold the records against the rules",
		Long: `Hold the records against the rules: the working tree, with --staged what the
next commit will hold, with --at any commit, tag, branch or date.

Each finding shows its sum and the clause of its limit. With --since, findings
are marked that REV did not have or had to a lesser degree; with --introduced
only nonconformities of that kind are shown and counted for the exit status.

With --names or -z, only the names of the files with findings are printed, as
seen from where you stand, for programs that go on with the files.`,
		Args: exactly(0, "no arguments"),
		RunE: func(cmd *cobra.Command, _ []string) error {
			if err := o.prefer(cmd.Context(), a, cmd.Flags().Changed); err != nil {
				return err
			}
			return a.lint(cmd.Context(), o)
		},
	}
	f := cmd.Flags()
	f.BoolVar(&o.staged, "staged", false, "read what is staged for the next commit")
	f.StringVar(&o.at, "at", "", "read a commit, tag, branch or date")
	f.StringVar(&o.since, "since", "", "compare with a commit, tag, branch or date")
	f.BoolVar(&o.introduced, "introduced", false, "show only what is new or worse; against HEAD where --since names nothing else")
	f.StringVar(&o.format, "format", "text", strings.Join(lintFormats(), ", "))
	f.StringVarP(&o.output, "output", "o", "", outputUsage)
	o.flags(f)
	f.IntVar(&o.most, "most", 200, "show at most so many findings as text; 0 shows all")
	f.BoolVar(&o.hook, "hook", false, "as the hook does it: what is staged, every plant, only what is new or worse")
	_ = f.MarkHidden("hook") // the hook's own way in, no promise to people
	return cmd
}

func (o *lintFlags) settle() error {
	if o.hook {
		o.staged, o.introduced = true, true
	}
	switch {
	case o.staged && o.at != "":
		return &usageError{"--staged and --at ask for two different things", "give one of them"}
	case !slices.Contains(lintFormats(), o.format):
		return noFormat(o.format, lintFormats())
	case o.most < 0:
		return &usageError{"--most is below zero", "0 shows all"}
	case o.asked() && o.format != "text":
		return &usageError{"--format and bare names are two different things", "give one of them"}
	}
	if o.introduced && o.since == "" {
		if o.parents = o.at != ""; !o.parents {
			o.since = "HEAD"
		}
	}
	return nil
}

func (a *app) lint(ctx context.Context, o lintFlags) error {
	if err := o.settle(); err != nil {
		return err
	}
	src, err := a.open(ctx)
	if err != nil {
		return err
	}
	defer src.close()
	src.all = o.hook
	snap, bases, err := a.sides(ctx, src, o)
	if err != nil {
		return err
	}
	if o.hook {
		if err = leftBehind(snap, bases); err != nil {
			return err
		}
		if len(snap.Plants) == 0 {
			_, err = fmt.Fprintln(a.Err, "git homerun: this commit holds no plant.hcl: nothing to check")
			return err
		}
	}
	objected := false
	reports := make([]*lint.Report, len(snap.Plants))
	want := onlyNew
	if o.format == "sarif" {
		want = alsoGone // no other format tells what is gone
	}
	a.progress.say("holding the records against the rules")
	for i, p := range snap.Plants {
		if err = ctx.Err(); err != nil {
			return err // interrupted
		}
		if reports[i], err = lintAgainst(p, bases, snap, want); err != nil {
			return err
		}
		objected = objected || objects(reports[i], o)
	}
	if err := a.showReports(ctx, src, reports, snap, o); err != nil {
		return err
	}
	if objected {
		return errObjected
	}
	return nil
}

// sides reads what is checked and what it is compared with: of the index, which
// every commit waits for, the one while plants are made of the other.
func (a *app) sides(ctx context.Context, src *source, o lintFlags) (snap *snapshot, bases []*snapshot, err error) {
	if !o.staged {
		if snap, err = a.chosen(ctx, src, o); err == nil {
			bases, err = a.baselines(ctx, src, o)
		}
		return snap, bases, err
	}
	snap, build, err := src.staged(ctx)
	if err != nil {
		return nil, nil, err
	}
	var made sync.WaitGroup
	made.Go(build)
	bases, failed := a.baselines(ctx, src, o)
	made.Wait()
	if snap, err = src.byLabel(snap); err == nil {
		err = failed
	}
	return snap, bases, err
}

func (a *app) chosen(ctx context.Context, src *source, o lintFlags) (*snapshot, error) {
	if o.at != "" {
		snap, _, err := src.at(ctx, o.at)
		return snap, err
	}
	return src.worktree(ctx)
}

// compares says whether findings are held against another state.
func (o *lintFlags) compares() bool { return o.since != "" || o.parents }

// baselines reads what to compare with: nothing where nothing was asked for;
// for a merge that is being committed every side of it, since a fault that one
// side already had is not the merge's doing.
func (a *app) baselines(ctx context.Context, src *source, o lintFlags) ([]*snapshot, error) {
	if !o.compares() {
		return nil, nil
	}
	revs := []string{o.since}
	var err error
	switch {
	case o.parents:
		revs, err = src.parents(ctx, o.at)
	case o.hook:
		var others []string
		others, err = src.repo.MergeHeads()
		revs = append(revs, others...)
	}
	if err != nil {
		return nil, err
	}
	if len(revs) == 0 {
		return []*snapshot{nil}, nil // before a first commit there is nothing
	}
	bases := make([]*snapshot, len(revs))
	for i, rev := range revs {
		base, err := a.baseline(ctx, src, rev)
		if err != nil {
			return nil, err
		}
		bases[i] = base
	}
	return bases, nil
}

// baseline reads one revision. It is nil where there is nothing yet: before the
// first commit, or before the first commit with a plant, everything is new.
func (a *app) baseline(ctx context.Context, src *source, rev string) (*snapshot, error) {
	base, _, err := src.at(ctx, rev)
	if isNoCommit(err) || isNoPlant(err) {
		return nil, nil
	}
	return base, err
}

// counterpart finds a plant in another snapshot: by label, or by folder where
// the label changed.
func counterpart(snap *snapshot, p *plant.Plant) *plant.Plant {
	if snap == nil {
		return nil
	}
	for _, q := range snap.Plants {
		if q.Name() == p.Name() {
			return q
		}
	}
	for _, q := range snap.Plants {
		if q.Dir == p.Dir {
			return q
		}
	}
	return nil
}

// objects says whether the report holds what the exit status counts.
func objects(rep *lint.Report, o lintFlags) bool {
	for i := range rep.Findings {
		f := &rep.Findings[i]
		if f.Severity == lint.Nonconformity && (f.Introduced || !o.introduced) {
			return true
		}
	}
	return false
}

// leftBehind refuses a commit that takes plant.hcl away from records that stay:
// nobody would check them from then on. Other .hcl files are no business of ours.
func leftBehind(snap *snapshot, bases []*snapshot) error {
	for _, base := range bases {
		if base == nil {
			continue
		}
		for _, entries := range base.entries {
			for _, e := range entries {
				if slices.Contains(snap.strays, e.Path) {
					return &noPlantError{
						message: schema.Printable(e.Path) + " belonged to a plant, and this commit takes the plant's plant.hcl away: nobody would check it any more",
						next:    "keep plant.hcl, or take the records out too", records: true,
					}
				}
			}
		}
	}
	return nil
}
