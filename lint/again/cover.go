package again

import (
	"fmt"
	"slices"

	"homerun/lint"
	"homerun/schema"
	"homerun/schema/plant"
	"homerun/schema/unit"
)

// settleFindings remembers what has come, forgets what has gone, and tells both
// under the waivers that cover them.
func (s *Standing) settleFindings(w *work, step *Step, today unit.Date) error {
	gone, come := subtract(w.gone, w.come, identity)
	leave := s.leaves(w, today)
	spots := make(map[spot]bool)
	for _, list := range [][]lint.Finding{gone, come} {
		for i := range list {
			spots[spotOf(&list[i])] = true
		}
	}
	waived := s.held != nil || leave != nil
	var was []lint.Finding
	if waived {
		s.covered(spots, s.held)
		s.covered(spots, leave)
		was = s.under(spots, s.held)
	}
	way, err := s.remember(w.gone, w.come)
	if err != nil {
		return err
	}
	if waived {
		is := s.under(spots, leave)
		restore(was, gone)
		restore(is, come)
		gone, come = subtract(was, is, identity)
	}
	reviewed, err := s.review(today)
	if err != nil {
		return err
	}
	left, fresh := subtract(s.reviewed, reviewed, identity)
	s.reviewed, s.held, s.today = reviewed, leave, today
	s.noteMark(way)
	step.Gone, step.Come = slices.Concat(gone, left), slices.Concat(come, fresh)
	order(step.Gone)
	order(step.Come)
	return nil
}

// stood says whether all findings that are gone are among those remembered.
func (s *Standing) stood(gone []lint.Finding) bool {
	left := make(map[spot][]string)
	for i := range gone {
		at, id := spotOf(&gone[i]), identity(&gone[i])
		ids, met := left[at]
		if !met {
			ids = each(s.found[at], identity)
		}
		n := slices.Index(ids, id)
		if n < 0 {
			return false
		}
		left[at] = slices.Delete(ids, n, n+1)
	}
	return true
}

func each(list []lint.Finding, say func(*lint.Finding) string) []string {
	all := make([]string, len(list))
	for i := range list {
		all[i] = say(&list[i])
	}
	return all
}

// remember keeps what was found from now on, and returns both as they are carried.
// The error says that something is gone that never came.
func (s *Standing) remember(gone, come []lint.Finding) (way difference, err error) {
	for i := range gone {
		f := &gone[i]
		at, id := spotOf(f), identity(f)
		list := s.found[at]
		n := slices.IndexFunc(list, func(g lint.Finding) bool { return identity(&g) == id })
		if n < 0 {
			return way, fmt.Errorf("rule %s: a finding is gone that never came: %s", f.Rule, f.Message)
		}
		about := s.nameOf(f.Record)
		about.noted = without(about.noted, f.Rule)
		s.settleName(about)
		way.gone = append(way.gone, list[n])
		if list = slices.Delete(list, n, n+1); len(list) > 0 {
			s.found[at] = list
		} else {
			delete(s.found, at)
		}
	}
	for i := range come {
		at := spotOf(&come[i])
		about := s.nameOf(at.record)
		about.noted = append(about.noted, at.rule)
		way.come = append(way.come, carried(&come[i]))
		s.found[at] = append(s.found[at], way.come[i])
	}
	return way, nil
}

// leaves are the waivers as they hold on a day, nil without any.
func (s *Standing) leaves(w *work, today unit.Date) *lint.Leave {
	if len(s.waivers) == 0 {
		return nil
	}
	if s.held != nil && today == s.today && !w.waives() {
		return s.held
	}
	return lint.LeaveOf(&plant.Plant{Waivers: s.Waivers()}, today)
}

// waives says whether a waiver stirs.
func (w *work) waives() bool {
	return slices.ContainsFunc(w.plan.stirs, func(at stir) bool {
		return at.before != nil && at.before.Kind.Name == schema.KindWaiver || at.after != nil && at.after.Kind.Name == schema.KindWaiver
	})
}

// covered adds what waivers are about, where they may hold otherwise than before.
func (s *Standing) covered(spots map[spot]bool, leave *lint.Leave) {
	if leave == nil {
		return
	}
	for _, w := range leave.Waivers() {
		for _, label := range w.Records {
			if at := (spot{w.Rule, label}); len(s.found[at]) > 0 {
				spots[at] = true
			}
		}
	}
}

// under lists what stands at some spots, with the waivers that cover it.
func (s *Standing) under(spots map[spot]bool, leave *lint.Leave) []lint.Finding {
	var all []lint.Finding
	for at := range spots {
		label := ""
		if leave != nil {
			label, _ = leave.Cover(at.rule, at.record)
		}
		for _, f := range s.found[at] {
			f.Waiver = label
			all = append(all, f)
		}
	}
	order(all)
	return all
}

// restore gives findings that are remembered without their sum all that was found.
func restore(list, full []lint.Finding) {
	if len(full) == 0 {
		return
	}
	by := make(map[string]*lint.Finding, len(full))
	for i := range full {
		by[identity(&full[i])] = &full[i]
	}
	for i := range list {
		waiver := list[i].Waiver
		list[i].Waiver = ""
		if whole := by[identity(&list[i])]; whole != nil {
			list[i] = *whole
		}
		list[i].Waiver = waiver
	}
}

// review lets the rules about waivers and policies judge them.
func (s *Standing) review(today unit.Date) ([]lint.Finding, error) {
	if len(s.waivers)+len(s.policies) == 0 {
		return nil, nil
	}
	s.round++
	in := s.newGroup(inExcerpt)
	for _, list := range [][]*piece{s.heads, s.policies, s.waivers} {
		for _, p := range list {
			in.add(p)
			for _, at := range p.refs {
				for _, q := range at.bearers {
					in.add(q)
					in.add(q.outer())
				}
			}
		}
	}
	p := s.excerpt(after, in.list, &plan{}, judged)
	leave := lint.LeaveOf(p, today)
	for _, w := range leave.Waivers() {
		for _, label := range w.Records {
			if len(s.found[spot{w.Rule, label}]) > 0 {
				leave.Cover(w.Rule, label)
			}
		}
	}
	return leave.Review(p, s.options.Rules, lint.Options{Today: today, Known: s.options.Known})
}
