package cli

import (
	"context"
	"errors"
	"io"

	"github.com/spf13/cobra"

	"homerun/lint/ability"
	"homerun/schema/plant"
)

// viewFlags are those of commands that look at one plant as it is or was.
type viewFlags struct {
	at             string
	format, output string
	most           int
}

func newTrace(a *app) *cobra.Command {
	var o viewFlags
	cmd := &cobra.Command{
		Use:   "trace PORT | LABEL [--at REV]",
		Short: "a channel from end to end, and what it can carry",
		Long: `Draw the whole channel of a port, a run or a cord in text, from equipment to
equipment: each cable with its length, type and the spaces that it crosses; the
sums, what is left to each limit, the applications that it carries and the limit
that stops the others. A port is written 1A-A:07.`,
		Args: exactlyOne("a port, or the label of a run or cord"),
		RunE: func(cmd *cobra.Command, args []string) error { return a.trace(cmd.Context(), args[0], o) },
	}
	o.flags(cmd)
	return cmd
}

func (o *viewFlags) flags(cmd *cobra.Command) {
	cmd.Flags().StringVar(&o.at, "at", "", "read a commit, tag, branch or date")
	cmd.Flags().StringVar(&o.format, "format", "text", "text or json")
	cmd.Flags().StringVarP(&o.output, "output", "o", "", outputUsage)
}

func (o *viewFlags) settle() error {
	switch {
	case o.format != "text" && o.format != "json":
		return noFormat(o.format, []string{"text", "json"})
	case o.most < 0:
		return &usageError{"--most is below zero", "0 shows all"}
	}
	return nil
}

// exactlyOne refuses more or fewer than one argument, in our words.
func exactlyOne(what string) cobra.PositionalArgs {
	return func(cmd *cobra.Command, args []string) error {
		if len(args) == 1 {
			return nil
		}
		return &usageError{cmd.CommandPath() + " takes " + what, "see " + cmd.CommandPath() + " -h"}
	}
}

// view reads the working tree, or the commit that was asked for.
func (s *source) view(ctx context.Context, rev string) (*snapshot, error) {
	if rev == "" {
		return s.worktree(ctx)
	}
	snap, _, err := s.at(ctx, rev)
	return snap, err
}

// plantAt is the one plant of the working tree, or of the commit that was asked
// for.
func (a *app) plantAt(ctx context.Context, rev string) (*snapshot, *plant.Plant, error) {
	src, err := a.open(ctx)
	if err != nil {
		return nil, nil, err
	}
	defer src.close()
	snap, err := src.view(ctx, rev)
	if err != nil {
		return nil, nil, err
	}
	p, err := snap.one()
	return snap, p, err
}

// lost makes a mistake in the command line of a label that leads nowhere.
func lost(err error) error {
	if e, ok := errors.AsType[*ability.LostError](err); ok {
		return &usageError{e.Message, e.Next}
	}
	return err
}

func (a *app) trace(ctx context.Context, name string, o viewFlags) error {
	if err := o.settle(); err != nil {
		return err
	}
	snap, p, err := a.plantAt(ctx, o.at)
	if err != nil {
		return err
	}
	found, err := ability.Find(p, name)
	if err != nil {
		return lost(err)
	}
	channels := make([]*ability.Channel, len(found))
	for i, c := range found {
		channels[i] = ability.Of(p, c)
	}
	return a.handOver(ctx, o.output, func(w io.Writer) error {
		if o.format == "json" {
			return ability.TraceJSON(w, name, channels, p, snap.Name)
		}
		return ability.TraceText(w, name, channels, p, ability.TextOptions{Options: a.page(ctx, w), Revision: snap.Title})
	})
}
