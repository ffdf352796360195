package cli

import (
	"context"
	"fmt"
	"path/filepath"

	"github.com/spf13/cobra"

	"homerun/diffreport/history"
	"homerun/diffreport/history/trail"
	"homerun/diffreport/render"
	"homerun/schema"
	"homerun/schema/plant"
	"homerun/schema/vcs"
)

type historyFlags struct {
	at, on, since, until string
	field, format        string
	keys                 []string
}

func historyFormats() []string { return []string{"text", "json"} }

func newHistory(a *app) *cobra.Command {
	var o historyFlags
	cmd := &cobra.Command{
		Use:   "history LABEL [--at REV] [--on DATE]",
		Short: "the life of one record, port or space",
		Long: `Tell the life of one record by the label on the wall: every commit that changed
it, in the words of the trade, with what was and what became. It follows the
record through new labels, other files and new layouts; a label that was given
up and used again has several lives, which are told apart.

A port, such as 1A-A:07, is told by the cables that ever ended there, when they
came and went, under whatever label its panel had; a space by what came into it
and left it, too.

--on shows the record as it stood at the end of a day, under the label that it
had then. A date, here and in --at of every command, means the newest commit on
the line of first parents that was entered on that day or before it, by its
committer's clock: what a side line did counts from the day it was merged. A day
ends at midnight UTC. The line is that of HEAD, with --on that of --at.

--since and --until leave out what happened before and after a day, --field
everything but changes of one field. Signatures are judged by the keys that
--keys names, and by no others.

The first look at a history reads every version of its records once; where
labels stand is kept in homerun/ in git's own folder, which may be removed at
any time.`,
		Args: exactly(1, "one label"),
		RunE: func(cmd *cobra.Command, args []string) error { return a.history(cmd.Context(), args[0], o) },
	}
	f := cmd.Flags()
	f.StringVar(&o.at, "at", "HEAD", "look back from a commit, tag, branch or date")
	f.StringVar(&o.on, "on", "", "show the record as it stood on a date, such as 2019-03-03")
	f.StringVar(&o.since, "since", "", "leave out what happened before a date")
	f.StringVar(&o.until, "until", "", "leave out what happened after a date")
	f.StringVar(&o.field, "field", "", "tell only changes of one field, such as length")
	f.StringArrayVar(&o.keys, "keys", nil, "a file of keys that are trusted: OpenPGP public keys, or SSH allowed signers; may be given again")
	f.StringVar(&o.format, "format", "text", "text or json")
	return cmd
}

func (a *app) history(ctx context.Context, label string, o historyFlags) error {
	if o.format != "text" && o.format != "json" {
		return noFormat(o.format, historyFormats())
	}
	filter, err := o.filter()
	if err != nil {
		return err
	}
	src, err := a.open(ctx)
	if err != nil {
		return err
	}
	defer src.close()
	src.repo.Warm()
	commit, now, err := src.plantOf(ctx, o.at, label)
	if err != nil {
		return err
	}
	var day *vcs.Commit
	if o.on != "" {
		if day, err = src.onDay(ctx, commit, o.on); err != nil {
			return err
		}
	}
	life, err := src.lifeOf(ctx, label, commit, now, day)
	if err != nil {
		return err
	}
	if src.repo.Form().Shallow {
		if _, err := fmt.Fprintln(a.Err, "git homerun: "+shallowWarning); err != nil {
			return err
		}
	}
	if day != nil {
		return src.standing(ctx, life, now, *day, o)
	}
	if err := src.facts(ctx, life.Events, o.keys); err != nil {
		return err
	}
	if err := filter.apply(&life); err != nil {
		return err
	}
	if o.format == "json" {
		return render.HistoryJSON(a.Out, life)
	}
	return render.HistoryText(a.Out, life, now.Units, a.page(ctx, a.Out))
}

// lifeOf tells what is asked by a label, or by that of a port. A label may end
// like a port; where something was ever called so, that is meant.
func (s *source) lifeOf(ctx context.Context, label string, commit vcs.Commit, now *plant.Plant, day *vcs.Commit) (history.History, error) {
	t, err := s.trail(ctx, commit, now)
	if err != nil {
		return history.History{}, err
	}
	asked := history.Asked{Label: label}
	if day != nil {
		asked.On = day.ID
	}
	life, err := history.Of(asked, t.Steps())
	if holder, port, is := portNamed(label); is && err == nil && len(life.Events) == 0 {
		asked.Label, asked.Port = holder, port
		life, err = history.Of(asked, t.Steps())
	}
	if err == nil && life.Kind == schema.KindSpace {
		asked.Contents = true
		life, err = history.Of(asked, t.Steps())
	}
	if err == nil && len(life.Events) == 0 {
		err = s.neverThere(ctx, commit, now, asked.Label)
	}
	return life, err
}

// trail opens the history of a commit for looking at labels of a plant. What it
// reads is kept in git's own folder, but for repositories of which git itself may
// tell another history tomorrow.
func (s *source) trail(ctx context.Context, from vcs.Commit, like *plant.Plant) (*trail.Trail, error) {
	o := trail.Options{Repo: s.repo, Reader: s.reader, From: from.ID, Plant: like.Name(), Dir: like.Dir, Progress: func(done, of int) {
		s.app.progress.count("reading the history, version", done, of)
	}}
	if f := s.repo.Form(); !f.Shallow && !f.Replaced && !f.Partial {
		o.Folder = filepath.Join(s.repo.CommonDir(), "homerun")
	}
	return trail.Open(ctx, o)
}
