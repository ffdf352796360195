package audit

import "hash/maphash"

// Options say what is known besides the commits.
type Options struct {
	// Points chooses where conformity is counted.
	Points Points
}

// Points is where conformity is counted.
type Points uint8

// The choices. With PointsAuto they are the tags on the line of first parents,
// and where there are none the ends of months.
const (
	PointsAuto Points = iota
	PointsTags
	PointsMonths
)

// An Audit is an audit in the making. It takes commits one by one.
type Audit struct {
	options Options
	seed    maphash.Seed
	// states are what stands at the commits of which children are yet to come.
	states map[string]*state
	before []*state

	standing []*Standing
	line     line
	waivers  waiverBook
	works    works
	custody  custody
}

// New begins an audit.
func New(o Options) *Audit {
	a := &Audit{options: o, seed: maphash.MakeSeed(), states: make(map[string]*state)}
	a.works.begin()
	return a
}

// Take adds a commit. Parents come before their children.
func (a *Audit) Take(step *Step) {
	s := a.fork(step)
	a.states[step.ID] = s
	if step.Before {
		a.takeBefore(step, s)
		return
	}
	left := a.takeAway(step, s)
	a.bring(step, s, left)
	a.clear(step, left)
	a.custody.take(step)
	a.works.take(step)
	if step.Main {
		a.line.take(step, s)
		a.waivers.take(step)
	}
}

// Forget tells that all children of a commit have been taken.
func (a *Audit) Forget(id string) { delete(a.states, id) }

// fork is the state of the first parent, as the commit's own.
func (a *Audit) fork(step *Step) *state {
	if len(step.Parents) == 0 {
		return newState(a.seed)
	}
	parent := a.states[step.Parents[0]]
	if parent == nil {
		panic("audit: a commit was taken before its parent")
	}
	return parent.branch()
}

// takeBefore notes what stood before the period. Several commits may lie right
// before it; what stands in more than one of them is one finding.
func (a *Audit) takeBefore(step *Step, s *state) {
	for i := range step.Come {
		f := &step.Come[i]
		if !f.Nonconformity {
			s.note(f, 1)
			continue
		}
		key := f.fingerprint(nil)
		st := unheld(a.before, s, key)
		if st == nil {
			st = &Standing{Finding: bare(f), Carried: true}
			a.standing = append(a.standing, st)
		}
		s.push(key, entry{st, f.Waiver})
		if step.Main {
			st.onLine, st.met = true, true
			st.cover(f.Waiver, step.Revision)
		}
	}
	a.before = append(a.before, s)
	if step.Main {
		a.line.begin = step.Revision
		a.line.opening = pointOf(step, s)
		a.waivers.take(step)
	}
}

// unheld finds a finding of other states that a state does not hold yet.
func unheld(others []*state, s *state, key string) *Standing {
	for _, other := range others {
		for _, e := range other.see(key) {
			if !holds(s.see(key), e.Standing) {
				return e.Standing
			}
		}
	}
	return nil
}

func holds(list []entry, st *Standing) bool {
	for _, e := range list {
		if e.Standing == st {
			return true
		}
	}
	return false
}

// bare is the finding without the waiver that covers it at the time.
func bare(f *Finding) Finding {
	b := *f
	b.Waiver = ""
	return b
}

// takeAway takes from the state what the first parent had and the commit has
// not, and returns it under the parent's fingerprints.
func (a *Audit) takeAway(step *Step, s *state) map[string][]entry {
	left := make(map[string][]entry)
	for i := range step.Gone {
		f := &step.Gone[i]
		if !f.Nonconformity {
			s.note(f, -1)
			continue
		}
		key := f.fingerprint(nil)
		e, ok := s.pop(key)
		if !ok {
			panic("audit: a finding is gone that never came: " + f.Message)
		}
		left[key] = append(left[key], e)
	}
	return left
}

// bring adds what the commit has and its first parent had not, or had in
// another form: under another label, with another figure, under a waiver.
func (a *Audit) bring(step *Step, s *state, left map[string][]entry) {
	for i := range step.Come {
		f := &step.Come[i]
		if !f.Nonconformity {
			s.note(f, 1)
			continue
		}
		key, old := f.fingerprint(nil), f.fingerprint(step.Former)
		var st *Standing
		if list := left[old]; len(list) > 0 {
			st, left[old] = list[0].Standing, list[1:]
			st.Finding = bare(f)
		} else {
			st = a.other(step, s, f, key)
		}
		s.push(key, entry{st, f.Waiver})
		if step.Main {
			st.reach(step, f.Waiver, len(a.line.samples))
		}
	}
}

// other finds a finding that a merge took from another side than the first, or
// makes a new one.
func (a *Audit) other(step *Step, s *state, f *Finding, key string) *Standing {
	var others []*state
	for _, id := range step.Parents[min(1, len(step.Parents)):] {
		if other := a.states[id]; other != nil {
			others = append(others, other)
		}
	}
	st := unheld(others, s, key)
	// What was cleared on the line and comes back with a merge stands anew.
	if st != nil && (!step.Main || !st.met || st.onLine) {
		return st
	}
	fresh := &Standing{Finding: bare(f), Introduced: step.Revision}
	if st != nil && !st.Carried {
		fresh.Introduced = st.Introduced
	}
	a.standing = append(a.standing, fresh)
	return fresh
}

// reach notes that a finding stands on the line of first parents.
func (s *Standing) reach(step *Step, waiver string, place int) {
	if !s.onLine {
		s.onLine, s.met = true, true
		s.Opened, s.openedAt = step.Revision, place
	}
	s.cover(waiver, step.Revision)
}

// clear ends what the commit cleared.
func (a *Audit) clear(step *Step, left map[string][]entry) {
	for _, list := range left {
		for _, e := range list {
			if !step.Main {
				e.removed = step.Revision
				continue
			}
			e.onLine, e.clearedAt = false, len(a.line.samples)
			e.Cleared, e.ClearedBy = step.Revision, step.Revision
			if step.Merge && e.removed.ID != "" {
				e.ClearedBy = e.removed
			}
			e.cover("", step.Revision)
		}
	}
}
