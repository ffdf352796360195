package cli

import (
	"context"
	"fmt"
	"iter"

	"github.com/spf13/cobra"

	"homerun/diffreport/history"
	"homerun/diffreport/render"
	"homerun/schema"
	"homerun/schema/plant"
	"homerun/schema/vcs"
)

type historyFlags struct{ at, format string }

func newHistory(a *app) *cobra.Command {
	var o historyFlags
	cmd := &cobra.Command{
		Use:   "history LABEL [--at REV]",
		Short: "the life of one record",
		Long: `Tell the life of one record by the label on the wall: every commit that changed
it, in the words of the trade, with what was and what became. It follows the
record through new labels, other files and new layouts; a label that was given
up and used again has several lives, which are told apart.`,
		Args: exactly(1, "one label"),
		RunE: func(cmd *cobra.Command, args []string) error { return a.history(cmd.Context(), args[0], o) },
	}
	cmd.Flags().StringVar(&o.at, "at", "HEAD", "look back from a commit, tag, branch or date")
	cmd.Flags().StringVar(&o.format, "format", "text", "text or json")
	return cmd
}

func (a *app) history(ctx context.Context, label string, o historyFlags) error {
	if o.format != "text" && o.format != "json" {
		return &usageError{"there is no format " + schema.Quote(o.format), "the formats are text and json"}
	}
	src, err := a.open(ctx)
	if err != nil {
		return err
	}
	defer src.close()
	snap, commit, err := src.at(ctx, o.at)
	if err != nil {
		return err
	}
	now, err := snap.holding(label)
	if err != nil {
		return err
	}
	life, err := history.Of(label, src.steps(ctx, commit, now))
	if err != nil {
		return err
	}
	if len(life.Events) == 0 {
		return neverThere(now, label)
	}
	if err := src.signatures(ctx, life.Events); err != nil {
		return err
	}
	if src.repo.Form().Shallow {
		if _, err := fmt.Fprintln(a.Err, "git homerun: "+shallowWarning); err != nil {
			return err
		}
	}
	if o.format == "json" {
		return render.HistoryJSON(a.Out, life)
	}
	return render.HistoryText(a.Out, life, now.Units, a.page(ctx, a.Out))
}

// holding finds the plant that has the label now. Where none has, the label may
// be one of the past, which a single plant can still be asked for.
func (snap *snapshot) holding(label string) (*plant.Plant, error) {
	var found []*plant.Plant
	for _, p := range snap.Plants {
		if _, ok := p.Find(label); ok {
			found = append(found, p)
		}
	}
	switch {
	case len(found) == 1:
		return found[0], nil
	case len(found) == 0 && len(snap.Plants) == 1:
		return snap.Plants[0], nil
	}
	return snap.one()
}

func neverThere(p *plant.Plant, label string) error {
	next := "labels stand in quotes behind the kind of record, as on the wall"
	if near := p.Nearest(label); near != "" {
		next = "did you mean " + schema.Printable(near) + "?"
	}
	return &usageError{fmt.Sprintf("%s: nothing was ever called %s", p.Name(), schema.Quote(label)), next}
}

// steps walks from a commit to the first, newest first, with the plant at each
// commit and at its parents. Where no records changed, both are the same plant,
// and nothing is read.
func (s *source) steps(ctx context.Context, from vcs.Commit, like *plant.Plant) iter.Seq2[history.Step, error] {
	s.all = true
	return func(yield func(history.Step, error) bool) {
		w := &backwards{source: s, like: like, plants: make(map[string]*plant.Plant)}
		seen := 0
		for c, err := range s.repo.Log(ctx, vcs.LogOptions{From: from.ID, Changes: true}) {
			if err != nil {
				yield(history.Step{}, err)
				return
			}
			seen++
			s.app.progress.say(fmt.Sprintf("reading the history, commit %d", seen))
			step, err := w.step(ctx, c)
			if !yield(step, err) || err != nil {
				return
			}
		}
	}
}

// backwards remembers the plants of commits that the walk has yet to reach.
type backwards struct {
	*source
	like   *plant.Plant
	plants map[string]*plant.Plant
}

func (w *backwards) step(ctx context.Context, c vcs.Commit) (history.Step, error) {
	here, err := w.plant(ctx, c.ID)
	if err != nil {
		return history.Step{}, err
	}
	delete(w.plants, c.ID)
	step := history.Step{
		Revision: history.Revision{ID: c.ID, Subject: c.Subject, Author: c.Author.Name, Committer: c.Committer.Name, Time: c.Committer.When},
		Plant:    here, Boundary: c.Boundary,
	}
	for i, id := range c.Parents {
		if !w.touches(c, i) {
			w.plants[id] = here
		}
		before, err := w.plant(ctx, id)
		if err != nil {
			return step, err
		}
		step.Parents = append(step.Parents, history.Parent{ID: id, Plant: before})
	}
	return step, nil
}

// touches says whether the commit differs from a parent in any record.
func (w *backwards) touches(c vcs.Commit, parent int) bool {
	for _, d := range c.Changed {
		if d.Parent == parent && schema.IsRecords(d.Path) {
			return true
		}
	}
	return false
}

// plant is the plant at a commit that is the one looked at, nil without one.
func (w *backwards) plant(ctx context.Context, id string) (*plant.Plant, error) {
	if known, ok := w.plants[id]; ok {
		return known, nil
	}
	entries, err := w.repo.Tree(ctx, id)
	if err != nil {
		return nil, err
	}
	snap, err := w.snapshot(ctx, &snapshot{Name: id}, entries)
	if err != nil {
		return nil, err
	}
	found := counterpart(snap, w.like)
	w.plants[id] = found
	return found, nil
}

// signatures looks at the commits of the events: which carry none at all is
// certain; whose the others are takes keys that nobody has named here.
func (s *source) signatures(ctx context.Context, events []history.Event) error {
	for i := range events {
		signed, err := s.repo.Signed(ctx, events[i].ID)
		if err != nil {
			return err
		}
		if !signed {
			events[i].Signature = history.Unsigned
		}
	}
	return nil
}
