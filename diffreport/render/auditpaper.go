package render

import (
	"fmt"
	"slices"
	"strings"

	"homerun/diffreport/audit"
	"homerun/schema"
)

// An auditPaper is an audit put into words and tables, for every document but the
// one for programs. Every text in it can be printed.
type auditPaper struct {
	Plant, Period, Verdict string
	Facts                  []fact
	// Glance says in a line each what the tables say at length.
	Glance   []glance
	Tables   []auditTable
	Unknown  []string
	Commands []fact
	Deciders []string
}

// A medium is what an audit is written on.
type medium uint8

const (
	// onPaper rows are few, and alike ones stand together.
	onPaper medium = iota
	// inSheets every row is there, to be sorted and counted.
	inSheets
)

// auditPaperOf puts an audit into words. At most so many rows of each table go
// on paper; 0 is all of them.
func auditPaperOf(r *audit.Report, on medium, most int) *auditPaper {
	p := &auditPaper{
		Plant: schema.Printable(r.Plant), Period: audit.Day(r.Begin) + " to " + audit.Day(r.End), Verdict: auditVerdict(r), Facts: auditFacts(r),
		Unknown: printable(r.Unknown), Deciders: auditLimits(),
		Tables: []auditTable{
			pointTable(r), ruleTable(r), rulePointTable(r, on), standingTable(r), clearedTable(r), ageTable(r), personTable(r), waiverTable(r), waiverChangeTable(r),
			signatureTable(r, on), lostTable(r), directTable(r), breachTable(r), untestedTable(r, on), repeatedTable(r),
		},
	}
	for i := range p.Tables {
		p.Tables[i].Number = i + 1
		p.Tables[i].settle(most)
	}
	p.Glance = glances(r, p.Tables)
	p.Commands = each(r.Commands, func(c audit.Command) fact { return fact{schema.Printable(c.Figure), schema.Printable(c.Command)} })
	return p
}

// After is the number of the section after the tables, and the next ones.
func (p *auditPaper) After(n int) int { return len(p.Tables) + n }

func auditVerdict(r *audit.Report) string {
	stands, waived := 0, 0
	for _, s := range r.Standing {
		if s.Stands() {
			stands++
			if s.Covered() != "" {
				waived++
			}
		}
	}
	if stands == 0 {
		return "No nonconformity stands at the end of the period."
	}
	text := count(stands, "nonconformity stands", "nonconformities stand") + " at the end of the period"
	switch {
	case waived == stands:
		text += ", under a waiver"
	case waived > 0:
		text += fmt.Sprintf(", %d of them under a waiver", waived)
	}
	return text + "."
}

func auditLimits() []string {
	return []string{
		"This report is of records. It is no inspection and no approval: the authority having jurisdiction, the local code in force and licensed practice decide.",
		"A nonconformity is one against the rule set named here, by the figures that the records state.",
	}
}

func auditFacts(r *audit.Report) []fact {
	from := ", from the first commit on"
	if r.From != "" {
		from = ", after commit " + short(r.From)
	}
	facts := []fact{
		{"period", audit.Day(r.Begin) + " to " + audit.Day(r.End) + from},
		{"last commit", schema.Printable(r.To)},
		{"line", "first parents, back from " + auditLine(r)},
		{"commits", fmt.Sprintf("%d, of which %d touch records; %d on the line", r.Commits, r.Records, r.Line)},
		{"rule set", fmt.Sprintf("%d rules, digest %s, the same for every commit", r.RuleCount, r.RuleSet)},
		{"judged by", judgedBy(r.By)},
	}
	for _, e := range r.Stated {
		facts = append(facts, fact{"stated", edition(&e)})
	}
	return append(facts,
		fact{"waivers", "by the day of each commit; whether they have expired, by " + r.Today.String()},
		fact{"made with", "homerun, " + schema.Printable(r.Tool)},
		fact{"made on", r.Today.String()},
	)
}

// judgedBy says by which standard, and what the other choice would be.
func judgedBy(b audit.By) string {
	if b == audit.ByToday {
		return b.String() + ", whatever others stated in their day (--by today; --by day takes each by its own)"
	}
	return b.String() + " (--by day; --by today takes the last one's for all)"
}

// auditLine is what the line of first parents is called.
func auditLine(r *audit.Report) string {
	if r.Branch == "" {
		return "the last commit"
	}
	if r.Protected {
		return schema.Printable(r.Branch) + ", a protected branch"
	}
	return schema.Printable(r.Branch) + ", which is no protected branch here"
}

func edition(e *audit.Edition) string {
	parts := []string{schema.Printable(e.Standard), schema.Printable(e.FireCode), "from " + audit.Day(e.Revision) + " (" + short(e.ID) + ")"}
	return strings.Join(slices.DeleteFunc(parts, func(text string) bool { return text == "" }), ", ")
}
