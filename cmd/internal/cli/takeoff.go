package cli

import (
	"context"
	"io"
	"strings"

	"github.com/spf13/cobra"

	"homerun/diffreport"
	"homerun/diffreport/takeoff"
	"homerun/schema/plant"
	"homerun/schema/unit"
)

type takeoffFlags struct {
	viewFlags
	waste int
	reel  string
}

func newTakeoff(a *app) *cobra.Command {
	var o takeoffFlags
	cmd := &cobra.Command{
		Use:   "takeoff [BASE..HEAD] [--at REV]",
		Short: "the materials of the plant, or of a change",
		Long: `Count materials: metres of cable by type with waste and reels, terminations,
cords, hardware, pathways, fire-stops and labels, each with its sum. Without a
range the whole plant is counted; BASE..HEAD counts what the change adds,
planned work included, and what it pulls or exchanges anew.`,
		Args: func(_ *cobra.Command, args []string) error {
			switch {
			case len(args) > 1:
				return &usageError{"takeoff takes one range of commits", "write BASE..HEAD"}
			case len(args) == 1 && !strings.Contains(args[0], ".."):
				return &usageError{"takeoff takes a range of commits", "write BASE..HEAD, or --at " + args[0] + " for the whole plant then"}
			case len(args) == 1 && o.at != "":
				return &usageError{"a range and --at ask for two different things", "give one of them"}
			}
			return nil
		},
		RunE: func(cmd *cobra.Command, args []string) error {
			return a.takeoff(cmd.Context(), strings.Join(args, ""), o)
		},
	}
	o.flags(cmd)
	cmd.Flags().IntVar(&o.most, "most", 12, "list at most so many parts of a sum as text; 0 lists all")
	cmd.Flags().IntVar(&o.waste, "waste", takeoff.DefaultWaste, "what is cut off and thrown away, in per cent of each run")
	cmd.Flags().StringVar(&o.reel, "reel", takeoff.DefaultReel.String(), "what twisted pair and coaxial cable comes in; \"0 m\" counts no reels")
	return cmd
}

// options reads the assumptions of the count.
func (o *takeoffFlags) options() (out takeoff.Options, err error) {
	if err = o.settle(); err != nil {
		return out, err
	}
	if o.waste < 0 || o.waste > 100 {
		return out, &usageError{"--waste is no percentage from 0 to 100", "write --waste 10"}
	}
	reel, err := unit.ParseLength(o.reel)
	if err != nil || reel < 0 {
		return out, &usageError{"--reel is no length", `write --reel "305 m"`}
	}
	return takeoff.Options{Waste: o.waste, Reel: reel}, nil
}

func (a *app) takeoff(ctx context.Context, rng string, o takeoffFlags) error {
	options, err := o.options()
	if err != nil {
		return err
	}
	if rng == "" {
		return a.takeoffWhole(ctx, options, o)
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
	p, err := sp.head.one()
	if err != nil {
		return err
	}
	before := counterpart(sp.base, p)
	options.Base, options.Head = "nothing", short(sp.head.Name)
	if sp.baseID != "" {
		options.Base = short(sp.baseID)
	}
	return a.showTakeoff(ctx, takeoffOf(before, p, options), o)
}

func takeoffOf(before, p *plant.Plant, o takeoff.Options) takeoff.Takeoff {
	return takeoff.Of(p, diffreport.Compare(before, p, diffreport.Options{}), o)
}

func (a *app) takeoffWhole(ctx context.Context, options takeoff.Options, o takeoffFlags) error {
	snap, p, err := a.plantAt(ctx, o.at)
	if err != nil {
		return err
	}
	options.Head = snap.Title
	return a.showTakeoff(ctx, takeoff.Whole(p, options), o)
}

func (a *app) showTakeoff(ctx context.Context, t takeoff.Takeoff, o takeoffFlags) error {
	return a.handOver(ctx, o.output, func(w io.Writer) error {
		if o.format == "json" {
			return takeoff.JSON(w, t)
		}
		return takeoff.Text(w, t, takeoff.TextOptions{Options: a.page(ctx, w), Most: o.most})
	})
}
