package lint

import (
	"cmp"
	"slices"
)

// A Former is what the linter found in a state that the reported one came of.
type Former struct {
	// Findings are those of the former state, waived ones too.
	Findings []Finding
	// Was tells what a record is called in the former state; nil where nothing
	// was renamed.
	Was func(label string) string
}

// Against marks what is new or worse than in every former state: what one side
// of a merge had before is not the merge's doing. Without a former state
// everything is new. What a former state had and the reported one has not is put
// among the findings that are gone, in report order.
func (r *Report) Against(formers ...Former) {
	all := append(fresh(r.Findings), fresh(r.Waived)...)
	r.Gone = nil
	told := make(map[string]bool)
	for _, f := range formers {
		for key, left := range f.match(all) {
			if !told[key] {
				r.Gone = append(r.Gone, left...)
			}
			told[key] = true
		}
	}
	for _, f := range all {
		f.Worse = f.Worse && f.Introduced
	}
	Sort(r.Gone)
}

// Introduced marks the findings of head that base does not have, and those
// that are further beyond their limit than they were. Former maps a label of
// head to what the record was called in base; nil where nothing was renamed.
func Introduced(base, head []Finding, former func(label string) string) {
	Former{Findings: base, Was: former}.match(fresh(head))
}

// fresh marks findings as new until they are found in a former state.
func fresh(findings []Finding) []*Finding {
	all := make([]*Finding, len(findings))
	for i := range findings {
		all[i] = &findings[i]
		all[i].Introduced, all[i].Worse = true, false
	}
	return all
}

// match takes the mark of what is new from the findings that stood before, and
// returns by fingerprint those of the former state that none of them is. Where
// several have the same fingerprint, each accounts for one.
func (f Former) match(all []*Finding) map[string][]Finding {
	same := func(label string) string { return label }
	was := f.Was
	if was == nil {
		was = same
	}
	stood := make(map[string][]Finding, len(f.Findings))
	for i := range f.Findings {
		key := f.Findings[i].Fingerprint(same)
		stood[key] = append(stood[key], f.Findings[i])
	}
	for _, list := range stood {
		slices.SortStableFunc(list, func(a, b Finding) int { return cmp.Compare(b.Excess, a.Excess) })
	}
	rest := make([]*Finding, 0, len(all))
	for _, now := range all {
		key := now.Fingerprint(was)
		if before := stood[key]; len(before) > 0 && now.Excess <= before[0].Excess {
			now.Introduced = false
			stood[key] = before[1:]
			continue
		}
		rest = append(rest, now)
	}
	for _, now := range rest {
		if key := now.Fingerprint(was); len(stood[key]) > 0 {
			now.Worse = true
			stood[key] = stood[key][1:]
		}
	}
	return stood
}
