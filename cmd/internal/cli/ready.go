package cli

import (
	"context"
	"io"
	"strings"

	"github.com/spf13/cobra"

	"homerun/lint/ability"
	"homerun/schema"
	"homerun/schema/plant"
)

func newReady(a *app) *cobra.Command {
	var o viewFlags
	var in string
	cmd := &cobra.Command{
		Use:   "ready APPLICATION [--in SPACE] [--at REV]",
		Short: "which channels carry an application, and what mends the others",
		Long: `Ask every channel in use whether it carries an application, such as 10GBASE-T or
10GBASE-SR. There are three answers: it carries it; it carries it on a condition
that no record can tell; it does not. What is missed and what would mend it
stands beside. With --in only the channels that end in a space are asked, or in
a space inside it.`,
		Args: exactlyOne("an application, such as 10GBASE-T"),
		RunE: func(cmd *cobra.Command, args []string) error { return a.ready(cmd.Context(), args[0], in, o) },
	}
	o.flags(cmd)
	cmd.Flags().StringVar(&in, "in", "", "ask only the channels that end in a space")
	cmd.Flags().IntVar(&o.most, "most", 200, "list at most so many channels of an answer as text; 0 lists all")
	return cmd
}

func (a *app) ready(ctx context.Context, application, in string, o viewFlags) error {
	if err := o.settle(); err != nil {
		return err
	}
	medium := ability.MediumOf(application)
	if medium == "" {
		return noApplication(application)
	}
	snap, p, err := a.plantAt(ctx, o.at)
	if err != nil {
		return err
	}
	var space *plant.Space
	if in != "" {
		if space, err = ability.SpaceNamed(p, in); err != nil {
			return lost(err)
		}
	}
	survey := ability.Ready(p, application, space)
	if len(survey.Results) == 0 {
		return nothingAsked(&survey, medium)
	}
	return a.handOver(ctx, o.output, func(w io.Writer) error {
		if o.format == "json" {
			return ability.SurveyJSON(w, &survey, p, snap.Name)
		}
		text := ability.TextOptions{Options: a.page(ctx, w), Revision: snap.Title}
		return ability.SurveyText(w, &survey, p, ability.SurveyOptions{TextOptions: text, Most: o.most})
	})
}

func noApplication(word string) error {
	names := ability.Applications()
	next := didYouMean(word, names, "the applications are "+strings.Join(names, ", "))
	return &usageError{"no standard says what " + schema.Quote(word) + " needs of a channel", next}
}

// nothingAsked is a failure: an answer about no channel would read as if all
// were well.
func nothingAsked(s *ability.Survey, medium string) error {
	where := "this plant"
	if s.Space != "" {
		where = schema.Printable(s.Space)
	}
	return &noPlantError{message: "no channel of " + medium + " is in use in " + where + ": nothing was asked", next: "git homerun lint says how many runs are recorded"}
}
