package cli

import (
	"context"
	"runtime/debug"
	"slices"

	"homerun/diffreport"
	"homerun/diffreport/audit"
	"homerun/lint"
	"homerun/lint/again"
	"homerun/schema"
	"homerun/schema/plant"
	"homerun/schema/unit"
	"homerun/schema/vcs"
)

// auditWalk reads the commits of a period for the audit of one plant. What a
// commit holds is forgotten once all its children were read.
type auditWalk struct {
	*source
	like *plant.Plant
	by   audit.By
	held map[string]*auditState
	// left counts the children of each commit that are yet to be read.
	left map[string]int
	main map[string]bool
	tags map[string][]string
	// verdicts are what signatures are worth, where keys were named.
	verdicts map[string]vcs.Verdict
	// yard holds the records of one commit at a time.
	yard *auditYard
	// kept is what an earlier audit found out; nil where nothing is kept.
	kept *auditKeep
	// change are the rules that judge a change, known the names of all rules.
	change []*lint.Rule
	known  []string
	// dues are the commits that were judged and not yet told to the audit.
	dues []*auditDue
	// editions are what the plant stated on the line of first parents.
	editions []audit.Edition
}

// auditState is what is remembered of a commit for its children.
type auditState struct {
	// stand is where the yard has the records of the commit, mark what it found there,
	// nil where it was not there.
	stand *auditStand
	mark  *again.Mark
	// there says whether the commit holds the plant; expiries are the last days of
	// its waivers.
	there    bool
	expiries []unit.Date
	day      unit.Date
}

// mostMemory is how much memory is used before it is given back at once, rather
// than when it suits: a long history makes much that nobody needs for long.
const mostMemory = 448 << 20

// walk hands every commit of the period to the audit, the oldest first.
func (w *auditWalk) walk(ctx context.Context, period *auditPeriod, into *audit.Audit) error {
	w.count(period)
	defer debug.SetMemoryLimit(debug.SetMemoryLimit(min(mostMemory, debug.SetMemoryLimit(-1))))
	w.yard = newAuditYard(w, period)
	w.change, w.known = changeRules(), ruleNames()
	defer w.yard.close()
	defer w.kept.write()
	for _, c := range period.before {
		if err := w.take(ctx, c, earlierCommit); err != nil {
			return err
		}
	}
	for i, c := range slices.Backward(period.commits) {
		w.app.progress.count("auditing the history, commit", len(period.commits)-i, len(period.commits))
		if err := w.take(ctx, c, periodCommit); err != nil {
			return err
		}
		if err := w.tell(into, mostDue); err != nil {
			return err
		}
	}
	return w.tell(into, 0)
}

// count finds the line of first parents, and how often each commit is asked for.
func (w *auditWalk) count(period *auditPeriod) {
	w.held, w.left, w.main = make(map[string]*auditState), make(map[string]int), make(map[string]bool)
	w.main[period.head.ID] = true
	for _, c := range period.commits {
		for i, p := range c.Parents {
			w.left[p]++
			if i == 0 && w.main[c.ID] {
				w.main[p] = true
			}
		}
	}
}

// A commitRole says whether a commit is of the audited period, or before it and
// only what the period starts from.
type commitRole uint8

const (
	periodCommit commitRole = iota
	earlierCommit
)

// take judges a commit. What it did is told to the audit later.
func (w *auditWalk) take(ctx context.Context, c vcs.Commit, role commitRole) error {
	before := role == earlierCommit
	step := &audit.Step{
		Revision: revisionOf(c),
		Day:      unit.DateOf(c.Committer.When), Before: before, Main: w.main[c.ID], Merge: len(c.Parents) > 1, Root: len(c.Parents) == 0,
		Tags: w.tags[c.ID], Records: touchesRecords(c),
	}
	step.Signature = w.signature(c)
	if before {
		step.Root = false
		c.Parents, c.Changed = nil, nil
	}
	step.Parents = c.Parents
	due := &auditDue{commit: c, step: step}
	w.dues = append(w.dues, due)
	now, err := w.state(ctx, due)
	if err != nil {
		return err
	}
	w.held[c.ID] = now
	for _, p := range c.Parents {
		if w.left[p]--; w.left[p] == 0 {
			delete(w.held, p)
			due.forget = append(due.forget, p)
		}
	}
	if len(w.held) == 1 {
		now.stand.forget()
		now.mark.Forget()
	}
	return nil
}

func touchesRecords(c vcs.Commit) bool {
	return slices.ContainsFunc(c.Changed, func(d vcs.Delta) bool { return schema.IsRecords(d.Path) })
}

// state judges one commit, and leaves to be compared what it did.
func (w *auditWalk) state(ctx context.Context, due *auditDue) (*auditState, error) {
	c, step := due.commit, due.step
	var parents []*auditState
	for _, id := range c.Parents {
		parents = append(parents, w.held[id])
	}
	now := &auditState{stand: newAuditStand(c, parents), day: step.Day}
	if i := unchanged(c, len(parents)); i == 0 && !parents[0].lapses(step.Day) {
		now.there, now.expiries, now.day, now.mark = parents[0].there, parents[0].expiries, parents[0].day, parents[0].mark
		return now, nil
	}
	key := keptKey(c.ID, roleOf(step))
	var kept bool
	if due.fact, kept = w.kept.get(key); !kept {
		due.key = key
		if err := w.fact(ctx, parents, now, due); err != nil {
			return nil, err
		}
	}
	return now, now.learn(due.fact)
}

// learn notes what the children of a commit ask for.
func (s *auditState) learn(f *auditFact) error {
	s.there = f.There
	for _, text := range f.Expiries {
		last, err := dateOf(text)
		if err != nil {
			return err
		}
		s.expiries = append(s.expiries, last)
	}
	return nil
}

func roleOf(step *audit.Step) commitRole {
	if step.Before {
		return earlierCommit
	}
	return periodCommit
}

// fact judges the records of a commit, and begins to compare them with its parents'.
func (w *auditWalk) fact(ctx context.Context, parents []*auditState, now *auditState, due *auditDue) error {
	all, err := w.steps(ctx, parents, now)
	if err != nil {
		return err
	}
	now.mark = w.yard.standing.Mark()
	first := all[0]
	f := &auditFact{There: w.yard.standing.Any(), Gone: each(auditFindings(first.Gone), keptFinding), Come: each(auditFindings(first.Come), keptFinding)}
	if f.There {
		w.yard.tell(f)
		f.statedBy(first.Head.Entry.Record)
	}
	due.fact = f
	due.compare(func() error { return w.compare(parents, now.day, f, all, due.step) })
	return nil
}

// steps goes to the commit from each of its parents, from the first one last, and
// tells what differs on the way from each; without parents from nothing.
func (w *auditWalk) steps(ctx context.Context, parents []*auditState, now *auditState) ([]*again.Step, error) {
	if len(parents) == 0 {
		if err := w.yard.clear(now.day); err != nil {
			return nil, err
		}
		step, err := w.yard.to(ctx, now)
		return []*again.Step{step}, err
	}
	all := make([]*again.Step, len(parents))
	for i, p := range slices.Backward(parents) {
		if _, err := w.yard.to(ctx, p); err != nil {
			return nil, err
		}
		var err error
		if all[i], err = w.yard.to(ctx, now); err != nil {
			return nil, err
		}
	}
	return all, nil
}

// unchanged finds the first parent that has the same records; -1 without one.
func unchanged(c vcs.Commit, parents int) int {
	for i := range parents {
		if !slices.ContainsFunc(c.Changed, func(d vcs.Delta) bool { return d.Parent == i && schema.IsRecords(d.Path) }) {
			return i
		}
	}
	return -1
}

// lapses says whether a waiver holds on one of two days and not on the other.
func (s *auditState) lapses(day unit.Date) bool {
	return slices.ContainsFunc(s.expiries, func(last unit.Date) bool { return last.Before(day) != last.Before(s.day) })
}

// compare tells what a commit did that none of its parents had.
func (w *auditWalk) compare(parents []*auditState, day unit.Date, f *auditFact, steps []*again.Step, step *audit.Step) error {
	if len(parents) == 0 {
		if !step.Before {
			f.Deeds = each(deeds(diffreport.Compare(nil, steps[0].Head, diffreport.Options{})), keptDeed)
		}
		return nil
	}
	var all [][]diffreport.Change
	for i, p := range parents {
		if !p.there && !f.There {
			return nil // there was no plant, and there is none
		}
		all = append(all, diffreport.Compare(steps[i].Base, steps[i].Head, diffreport.Options{}))
	}
	f.Compared, f.Renamed = true, renamedIn(all[0])
	f.Deeds = each(commonDeeds(all), keptDeed)
	if !f.There {
		return nil
	}
	against, err := w.judgeChange(parents, day, steps, all)
	f.Against = each(against, keptFinding)
	return err
}

// judgeChange holds the change against the rules that judge one, from every
// parent: what one side of a merge did is not the merge's doing.
func (w *auditWalk) judgeChange(parents []*auditState, day unit.Date, steps []*again.Step, all [][]diffreport.Change) ([]audit.Finding, error) {
	var found []lint.Finding
	for i, p := range parents {
		if !p.there {
			return nil, nil // the plant is new: nothing was changed
		}
		rep, err := lint.Run(steps[i].Head, w.change, lint.Options{Today: day, Known: w.known, Base: steps[i].Base, Former: diffreport.Former(all[i])})
		if err != nil {
			return nil, err
		}
		if i == 0 {
			found = rep.Findings
			continue
		}
		found = common(found, rep.Findings)
	}
	return auditFindings(found), nil
}
