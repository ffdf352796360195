package cli

import (
	"context"

	"homerun/diffreport/history"
	"homerun/diffreport/render"
	"homerun/schema"
	"homerun/schema/plant"
	"homerun/schema/vcs"
)

// onDay finds the commit of a day on the line that leads to another.
func (s *source) onDay(ctx context.Context, to vcs.Commit, day string) (*vcs.Commit, error) {
	if !vcs.IsDate(day) {
		return nil, &usageError{schema.Quote(day) + " is not a date", "write the year, the month and the day, such as 2019-03-03; for a commit there is --at"}
	}
	c, err := s.repo.OnDay(ctx, to.ID, day)
	return &c, err
}

// standing shows what is asked as it stood at the commit of a day.
func (s *source) standing(ctx context.Context, life history.History, now *plant.Plant, day vcs.Commit, o historyFlags) error {
	s.all = true
	snap, err := s.commit(ctx, day)
	if err != nil {
		return err
	}
	known, err := s.revisions(ctx, []history.Event{{Revision: history.Revision{ID: day.ID}}}, o.keys)
	if err != nil {
		return err
	}
	then := history.Standing(life, counterpart(snap, now))
	then.Day, then.Revision = o.on, known[day.ID]
	if o.format == "json" {
		return render.StandingJSON(s.app.Out, then)
	}
	return render.StandingText(s.app.Out, then, s.app.page(ctx, s.app.Out))
}
