package cli

import (
	"homerun/diffreport/audit"
	"homerun/schema/vcs"
)

// An auditDue is a commit on its way to the audit: its records were judged, and what
// it did is compared while the next ones are judged.
type auditDue struct {
	commit vcs.Commit
	step   *audit.Step
	// fact is what the commit tells, nil where it has the records of its parent.
	fact *auditFact
	// key is under what the fact is to be kept, empty where it is kept already.
	key string
	// forget are the commits that nobody asks for after this one.
	forget []string
	// compared hands over that the fact is complete; nil where it was at once.
	compared chan error
}

// mostDue is how many commits wait for their turn.
const mostDue = 16

// compare completes the fact beside what else is done.
func (d *auditDue) compare(complete func() error) {
	d.compared = make(chan error, 1)
	go func() { d.compared <- complete() }()
}

// tell tells the audit of the commits that are due, in their order, but for the last
// so many.
func (w *auditWalk) tell(into *audit.Audit, but int) error {
	for len(w.dues) > but {
		d := w.dues[0]
		w.dues = w.dues[1:]
		if d.compared != nil {
			if err := <-d.compared; err != nil {
				return err
			}
		}
		if d.fact != nil {
			if d.key != "" {
				w.kept.put(d.key, d.fact)
			}
			if d.fact.Stated {
				w.edition(d.commit, d.fact)
			}
			if err := d.fact.tell(d.step); err != nil {
				return err
			}
		}
		into.Take(d.step)
		for _, id := range d.forget {
			into.Forget(id)
		}
	}
	return nil
}
