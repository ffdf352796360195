package rules

import (
	"fmt"
	"slices"
	"strings"

	"homerun/lint"
	"homerun/schema"
)

// TransitionWaiver finds waivers that cover more than before although nobody
// granted more.
var TransitionWaiver = &lint.Rule{
	Name: "transition-waiver", Title: "Checks that no waiver is widened or extended without a new grant",
	Severity: lint.Nonconformity, Safety: true, Change: true, Check: transitionWaiver,
}

func transitionWaiver(p *lint.Pass) {
	before := make(map[string]schema.Entry, len(p.Base.Waivers))
	for _, e := range p.Base.Waivers {
		if _, again := before[e.Label]; !again {
			before[e.Label] = e
		}
	}
	for _, e := range p.Plant.Waivers {
		was, stood := before[e.Label]
		if !stood || was.Record == e.Record {
			continue
		}
		old, oldKnown := schema.WaiverGranted.In(was.Record)
		now, nowKnown := schema.WaiverGranted.In(e.Record)
		if oldKnown && nowKnown && strings.TrimSpace(old) == strings.TrimSpace(now) {
			widened(p, e, was, now)
		}
	}
}

// widened reports each way in which a waiver covers more under the same grant.
func widened(p *lint.Pass, e, was schema.Entry, granted string) {
	report := func(field *schema.Field, fact, before, now string, key ...string) {
		f := lint.AboutField(e, field)
		f.Message = fmt.Sprintf("%s: %s, granted as before: %s", schema.Printable(e.Label), fact, schema.Quote(granted))
		f.Working = []lint.Term{term(field.Name+" before", before), term(field.Name+" now", now), term("granted, before and now", schema.Quote(granted))}
		f.Result, f.Limit, f.Source = now, before, "the waiver as it was granted"
		f.Next = "have it granted anew and say so in granted, or put it back"
		f.Related = []schema.Note{note(was, "as it was")}
		f.Key = append([]string{field.Name}, key...)
		p.Report(f)
	}
	oldRule, known := schema.WaiverRule.In(was.Record)
	if rule, stated := schema.WaiverRule.In(e.Record); known && stated && rule != oldRule {
		report(schema.WaiverRule.Field, "is now for another rule", schema.Printable(oldRule), schema.Printable(rule))
	}
	oldDay, known := schema.WaiverExpires.In(was.Record)
	if day, stated := schema.WaiverExpires.In(e.Record); known && stated && oldDay.Before(day) {
		report(schema.WaiverExpires.Field, fmt.Sprintf("extended from %s to %s", oldDay, day), oldDay.String(), day.String())
	}
	oldRecords, known := schema.WaiverRecords.In(was.Record)
	records, stated := schema.WaiverRecords.In(e.Record)
	if !known || !stated {
		return
	}
	for i, label := range records {
		if slices.Contains(oldRecords, p.Former(label)) || slices.Contains(records[:i], label) {
			continue
		}
		report(schema.WaiverRecords.Field, "widened to "+schema.Printable(label), nameList(oldRecords), nameList(records), label)
	}
}

func nameList(labels []string) string {
	shown := make([]string, len(labels))
	for i, l := range labels {
		shown[i] = schema.Printable(l)
	}
	return strings.Join(shown, ", ")
}
