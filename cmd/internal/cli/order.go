package cli

import (
	"context"
	"io"
	"strings"

	"github.com/spf13/cobra"

	"homerun/diffreport/render"
)

type orderFlags struct {
	staged         bool
	format, output string
}

func newOrder(a *app) *cobra.Command {
	var o orderFlags
	cmd := &cobra.Command{
		Use:   "order [BASE..HEAD | BASE...HEAD | BRANCH | COMMIT | --staged]",
		Short: "the work order for a change",
		Long: `Turn a change of the records into a work order: what moves, what is added,
exchanged, removed or relabelled, what is a correction on paper only, and the
steps on site in an order that works.

BASE..HEAD    from one commit to another
BASE...HEAD   what HEAD adds since it left BASE
BRANCH        what a branch adds since it left where you are; of a branch that
              is merged already, its last commit
COMMIT        what one commit changed, a merge what it brought to its first
              parent
DAY..DAY      from the morning of the first day to the evening of the last
--staged      what the next commit will change

A commit may be named by an id, a tag, a branch or a day such as 2026-03-31. On
the left of a range a day is its morning, anywhere else its evening.

The formats: text for a terminal or printer, markdown for a comment on a change,
html for one page with drawings that prints and reads on a telephone, sheet for
a spreadsheet, json for programs.`,
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
	cmd.Flags().StringVarP(&o.output, "output", "o", "", "write to a file; one that is there is replaced")
	return cmd
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
	sp, err := src.span(ctx, rng)
	if err != nil {
		return err
	}
	a.progress.say("planning the work")
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
	if err := a.handOver(ctx, o.output, func(w io.Writer) error { return write(w, jobs) }); err != nil {
		return err
	}
	if clash {
		return errObjected
	}
	return nil
}
