package cli

import (
	"cmp"
	"slices"
	"strings"

	"homerun/diffreport"
	"homerun/diffreport/audit"
	"homerun/lint"
	"homerun/lint/rules"
	"homerun/schema"
)

// auditFindings are findings as the audit takes them, in an order of their own.
func auditFindings(found []lint.Finding) []audit.Finding {
	all := make([]audit.Finding, len(found))
	for i := range found {
		f := &found[i]
		all[i] = audit.Finding{
			Rule: f.Rule, Kind: f.Kind, Record: f.Record, Key: f.Key, Message: f.Message, Nonconformity: f.Severity == lint.Nonconformity, Waiver: f.Waiver,
		}
	}
	slices.SortFunc(all, compareFindings)
	return all
}

func compareFindings(a, b audit.Finding) int {
	return cmp.Or(
		cmp.Compare(a.Rule, b.Rule), cmp.Compare(a.Kind, b.Kind), cmp.Compare(a.Record, b.Record), slices.Compare(a.Key, b.Key),
		cmp.Compare(a.Waiver, b.Waiver), cmp.Compare(a.Message, b.Message), compareBool(a.Nonconformity, b.Nonconformity),
	)
}

func compareBool(a, b bool) int {
	switch {
	case a == b:
		return 0
	case b:
		return -1
	}
	return 1
}

// changeRules are the rules that judge a change, ruleNames all rules.
func changeRules() []*lint.Rule {
	return slices.DeleteFunc(rules.All(), func(r *lint.Rule) bool { return !r.Change })
}

func ruleNames() []string {
	var names []string
	for _, r := range rules.All() {
		names = append(names, r.Name)
	}
	return names
}

func waiversOf(entries []schema.Entry) []audit.Waiver {
	list := make([]audit.Waiver, 0, len(entries))
	for _, e := range entries {
		w := audit.Waiver{Label: e.Label}
		w.Rule, _ = schema.WaiverRule.In(e.Record)
		w.Records, _ = schema.WaiverRecords.In(e.Record)
		w.Reason, _ = schema.WaiverReason.In(e.Record)
		w.Granted, _ = schema.WaiverGranted.In(e.Record)
		w.Expires, _ = schema.WaiverExpires.In(e.Record)
		list = append(list, w)
	}
	return list
}

func deeds(changes []diffreport.Change) []audit.Deed {
	list := make([]audit.Deed, 0, len(changes))
	for i := range changes {
		c := &changes[i]
		list = append(list, audit.Deed{Kind: c.Kind, Label: c.Label, Former: c.Former, Class: c.Class, Meaning: c.Meaning, New: c.Before.Record == nil, Gone: c.After.Record == nil})
	}
	return list
}

// commonDeeds are what a commit did against each of its parents.
func commonDeeds(all [][]diffreport.Change) []audit.Deed {
	list := deeds(all[0])
	for _, changes := range all[1:] {
		also := make(map[string]bool, len(changes))
		for i := range changes {
			also[changes[i].Kind+"\x00"+changes[i].Label] = true
		}
		list = slices.DeleteFunc(list, func(d audit.Deed) bool { return !also[strings.Join([]string{d.Kind, d.Label}, "\x00")] })
	}
	return list
}
