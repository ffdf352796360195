package render

import (
	"fmt"
	"strings"

	"homerun/diffreport/audit"
)

func waiverTable(r *audit.Report) auditTable {
	t := auditTable{
		Name: "Waivers", Title: "Waivers", Lead: "Granted is what the record states; entered is the day of the commit that put it there. Used counts the nonconformities that it ever covered.",
		None: "There is no waiver.",
		Columns: []column{
			whole("Waiver", ""), texted("State", "%v"), whole("Last day", "; last day %v"), texted("Rule", "; %v"), texted("Records", " for %v"), long("Reason", "; reason: %v"),
			texted("Granted", "; granted by %v"), whole("Entered", "; entered %v"), texted("By", " by %v"), counted("Used", "; covered %v"), counted("Covers now", ", covers %v now"),
		},
	}
	for _, l := range r.Waivers {
		t.Rows = append(t.Rows, []any{
			l.Label, waiverState(&l), l.Expires.String(), l.Rule, list(l.Records), l.Reason, l.Granted, entered(&l), l.Entered.Author, l.Findings, l.Covers,
		})
	}
	return t
}

// The states of a waiver.
const (
	waiverInForce   = "in force"
	waiverIdle      = "covers nothing"
	waiverExpired   = "expired"
	waiverLapsed    = "expired after the last commit"
	waiverWithdrawn = "withdrawn"
)

func waiverState(l *audit.WaiverLife) string {
	switch {
	case l.Withdrawn.ID != "":
		return waiverWithdrawn + " " + audit.Day(l.Withdrawn)
	case l.Expired && l.Covers > 0:
		return waiverLapsed
	case l.Expired:
		return waiverExpired
	case l.Covers == 0:
		return waiverIdle
	}
	return waiverInForce
}

func entered(l *audit.WaiverLife) string {
	if l.Entered.ID == "" {
		return "before"
	}
	return audit.Day(l.Entered)
}

func waiverChangeTable(r *audit.Report) auditTable {
	t := auditTable{
		Name: "Waiver changes", Title: "Waivers changed after they were entered", None: "None was changed.",
		Columns: []column{whole("Waiver", ""), whole("Day", "%v"), whole("Commit", " (%v)"), texted("By", " by %v"), long("What changed", ": %v")},
	}
	for _, l := range r.Waivers {
		for _, c := range l.Changes {
			t.Rows = append(t.Rows, []any{l.Label, audit.Day(c.Revision), short(c.ID), c.Author, waiverChange(&c)})
		}
	}
	return t
}

func waiverChange(c *audit.WaiverChange) string {
	var parts []string
	if c.Before != c.After {
		parts = append(parts, fmt.Sprintf("last day %s became %s", c.Before, c.After))
	}
	if len(c.Added) > 0 {
		parts = append(parts, "covers also "+list(c.Added))
	}
	if len(c.Dropped) > 0 {
		parts = append(parts, "covers no more "+list(c.Dropped))
	}
	if c.Reworded {
		parts = append(parts, "rule, reason or grant reworded")
	}
	return strings.Join(parts, "; ")
}
