package rules

import (
	"fmt"
	"slices"

	"homerun/lint"
	"homerun/schema"
)

// The rules of this family review waivers and policies, once every other rule
// has been checked.

// WaiverExpired finds waivers whose last day is past.
var WaiverExpired = &lint.Rule{
	Name: "waiver-expired", Title: "Checks that no waiver is past its last day",
	Severity: lint.Nonconformity, Review: waiverExpired,
}

func waiverExpired(r *lint.Review) {
	for _, w := range r.Waivers {
		if !w.Expired {
			continue
		}
		f := lint.AboutField(w.Entry, schema.WaiverExpires.Field)
		f.Message = fmt.Sprintf("%s: the waiver for %s ended on %s, today is %s", schema.Printable(w.Label), schema.Printable(w.Rule), w.Expires, r.Today)
		f.Working = []lint.Term{term("last day", w.Expires.String()), term("today", r.Today.String())}
		f.Result, f.Limit, f.Source = r.Today.String(), w.Expires.String(), "the waiver itself"
		f.Next = "mend what it covered, or have it granted anew with a new last day"
		r.Report(f)
	}
}

// WaiverReason finds waivers that do not say why, or who granted them.
var WaiverReason = &lint.Rule{
	Name: "waiver-reason", Title: "Checks that every waiver says why the departure is acceptable and who granted it",
	Severity: lint.Nonconformity, Review: waiverReason,
}

func waiverReason(r *lint.Review) {
	for _, w := range r.Waivers {
		for _, field := range []schema.Handle[string]{schema.WaiverReason, schema.WaiverGranted} {
			text, stated := field.In(w.Record)
			if !stated || !blank(text) {
				continue // where nothing is written, the record family says so
			}
			f := lint.AboutField(w.Entry, field.Field)
			f.Message = fmt.Sprintf("%s: %s says nothing", schema.Printable(w.Label), field.Name)
			f.Working = []lint.Term{term(field.Name, schema.Quote(text))}
			f.Result, f.Limit, f.Source = "empty", field.Doc, "ISO 9000:2015, concession: granted by somebody, for a use and a time; unconfirmed: check the printed standard"
			f.Next = "write " + field.Name + ": " + field.Doc
			f.Key = []string{field.Name}
			r.Report(f)
		}
	}
}

func blank(text string) bool {
	for _, c := range text {
		if c != ' ' && c != '\t' && c != '\n' {
			return false
		}
	}
	return true
}

// WaiverRule finds waivers for rules that there are not.
var WaiverRule = &lint.Rule{
	Name: "waiver-rule", Title: "Checks that the rule that a waiver names is one of the rules",
	Severity: lint.Nonconformity, Review: waiverRule,
}

func waiverRule(r *lint.Review) {
	for _, w := range r.Waivers {
		if name, stated := schema.WaiverRule.In(w.Record); stated && !slices.Contains(r.Known, name) {
			r.Report(noSuchRule(r, w.Entry, schema.WaiverRule.Field, name))
		}
	}
}

func noSuchRule(r *lint.Review, e schema.Entry, field *schema.Field, name string) lint.Finding {
	f := lint.AboutField(e, field)
	f.Message = fmt.Sprintf("%s: there is no rule %s", schema.Printable(e.Label), schema.Quote(name))
	f.Working = []lint.Term{term("rule named", schema.Quote(name))}
	f.Result, f.Limit, f.Source = schema.Quote(name), "the name of a rule", "the list of rules"
	f.Next = "explain lists the rules"
	if near := schema.Nearest(name, r.Known); near != "" {
		f.Next = fmt.Sprintf("did you mean %q?", near)
	}
	return f
}

// WaiverUnmatched finds waivers that cover nothing any more.
var WaiverUnmatched = &lint.Rule{
	Name: "waiver-unmatched", Title: "Checks that every record that a waiver names still departs from its rule",
	Severity: lint.Observation, Review: waiverUnmatched,
}

func waiverUnmatched(r *lint.Review) {
	for _, w := range r.Waivers {
		// An expired or broken waiver is already named. A change is made once,
		// so its waiver matches once.
		if slices.Contains(r.Changes, w.Rule) || w.Expired || w.Unusable || !slices.Contains(r.Known, w.Rule) {
			continue
		}
		for i, label := range w.Records {
			if !w.Matched[i] {
				r.Report(unmatchedFinding(r, w, label))
			}
		}
	}
}

func unmatchedFinding(r *lint.Review, w *lint.Waiver, label string) lint.Finding {
	f := lint.AboutField(w.Entry, schema.WaiverRecords.Field)
	name := schema.Printable(label)
	f.Key = []string{label}
	f.Limit, f.Source = "a finding of "+w.Rule, "the findings of this plant"
	if item, ok := r.Plant.Find(label); ok {
		f.Message = fmt.Sprintf("%s: %s has no finding of %s", schema.Printable(w.Label), name, w.Rule)
		f.Next = "take the record out of the waiver: the departure is mended"
		f.Related = []schema.Note{note(item.Place(), "the record that is waived")}
	} else {
		f.Message = fmt.Sprintf("%s: there is no record %s", schema.Printable(w.Label), schema.Quote(label))
		f.Next = "take it out of the waiver"
		if near := r.Plant.Nearest(label); near != "" {
			f.Next = fmt.Sprintf("did you mean %s?", schema.Quote(near))
		}
	}
	f.Working = []lint.Term{term("rule", w.Rule), term("record", name), term("findings there", "0")}
	f.Result = "no finding"
	return f
}

// WaiverPolicy finds policies that can not be followed.
var WaiverPolicy = &lint.Rule{
	Name: "waiver-policy", Title: "Checks that every policy of the owner can be followed and lowers no safety rule",
	Severity: lint.Nonconformity, Review: waiverPolicy,
}

func waiverPolicy(r *lint.Review) {
	for _, e := range r.Plant.Policies {
		if name, stated := schema.PolicyRule.In(e.Record); stated && !slices.Contains(r.Known, name) {
			r.Report(noSuchRule(r, e, schema.PolicyRule.Field, name))
		}
	}
	for _, fault := range r.Faults() {
		f := lint.AboutField(fault.Entry, fault.Field)
		f.Message, f.Next = fault.Message, fault.Next
		shown := fault.Entry.Lookup(fault.Field).Show(r.Plant.Units)
		f.Working = []lint.Term{term(fault.Field.Name, schema.Quote(shown))}
		f.Result, f.Limit, f.Source = schema.Quote(shown), fault.Next, "the rule that the policy is about"
		f.Key = []string{fault.Field.Name}
		r.Report(f)
	}
}
