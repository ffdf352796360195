package render

import (
	"cmp"
	"fmt"
	"maps"
	"slices"
	"strings"

	"homerun/diffreport/audit"
	"homerun/diffreport/history"
	"homerun/schema"
)

// An auditPaper is an audit put into words and tables, for every document but the
// one for programs. Every text in it can be printed.
type auditPaper struct {
	Plant, Verdict string
	Facts          []fact
	Tables         []auditTable
	Unknown        []string
	Commands       []fact
	Deciders       []string
	Trend, Ages    *chart
}

// An auditTable is one part of an audit. Rows hold numbers and texts; the first
// Shown of them are for paper, all of them for a spreadsheet.
type auditTable struct {
	// Name is short and for a sheet, Title and Lead are for people; None is what to
	// say of an empty one.
	Name, Title, Lead, None string
	Headings                []string
	Rows                    [][]any
	Shown                   int
}

// Left is how many rows paper does not show.
func (t auditTable) Left() int { return len(t.Rows) - t.Shown }

// Paper is the rows that paper shows.
func (t auditTable) Paper() [][]any { return t.Rows[:t.Shown] }

// auditPaperOf puts an audit into words. At most so many rows of each table go
// on paper; 0 is all of them.
func auditPaperOf(r *audit.Report, most int) *auditPaper {
	p := &auditPaper{Plant: schema.Printable(r.Plant), Verdict: auditVerdict(r), Unknown: printable(r.Unknown), Deciders: auditLimits()}
	p.Facts = auditFacts(r)
	p.Tables = []auditTable{
		pointTable(r), ruleTable(r), rulePointTable(r), standingTable(r), clearedTable(r), personTable(r), waiverTable(r), waiverChangeTable(r),
		signatureTable(r), lostTable(r), directTable(r), breachTable(r), untestedTable(r), repeatedTable(r),
	}
	for i := range p.Tables {
		t := &p.Tables[i]
		t.Headings = printable(t.Headings)
		t.Shown = len(t.Rows)
		if most > 0 && t.Name != "Conformity" && t.Name != "Rules" && t.Name != "Rules over time" {
			t.Shown = min(t.Shown, most)
		}
		for _, row := range t.Rows {
			for j, cell := range row {
				if text, is := cell.(string); is {
					row[j] = schema.Printable(text)
				}
			}
		}
	}
	p.Commands = each(r.Commands, func(c audit.Command) fact { return fact{c.Figure, schema.Printable(c.Command)} })
	p.Trend, p.Ages = trendChart(r), ageChart(r)
	return p
}

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
		"A nonconformity is one against the rule set named above, by the figures that the records state.",
	}
}

func auditFacts(r *audit.Report) []fact {
	from := "the first commit"
	if r.From != "" {
		from = short(r.From) + ", " + audit.Day(r.Begin)
	}
	facts := []fact{
		{"from", from},
		{"to", short(r.To) + ", " + audit.Day(r.End)},
		{"commits", fmt.Sprintf("%d, of which %d touch records; %d on the line of first parents", r.Commits, r.Records, r.Line)},
		{"judged by", r.By.String()},
	}
	for _, e := range r.Stated {
		facts = append(facts, fact{"stated", strings.Join(slices.DeleteFunc([]string{schema.Printable(e.Standard), schema.Printable(e.FireCode), "from " + audit.Day(e.Revision), "commit " + short(e.ID)}, isEmpty), ", ")})
	}
	return append(facts,
		fact{"waivers", "by the day of each commit; expired ones told by " + r.Today.String()},
		fact{"rule set", fmt.Sprintf("%d rules, digest %s", r.RuleCount, r.RuleSet)},
		fact{"made with", "homerun, " + schema.Printable(r.Tool)},
		fact{"caught early", count(r.Caught, "nonconformity", "nonconformities") + " introduced and cleared on branches, before the line"},
	)
}

func isEmpty(text string) bool { return text == "" }

func pointTable(r *audit.Report) auditTable {
	t := auditTable{
		Name: "Conformity", Title: "Conformity over time", Lead: "Open counts the nonconformities that no waiver covers, waived the findings that one does. Opened and cleared are since the point before, waived ones too.",
		None: "There is no commit to count at.", Headings: []string{"Point", "Day", "Commit", "Open", "Opened", "Cleared", "Waived", "Observed"},
	}
	for _, p := range r.Points {
		t.Rows = append(t.Rows, []any{p.Name, audit.Day(p.Revision), short(p.ID), p.Nonconformities, p.Opened, p.Cleared, p.Waived, p.Observations})
	}
	return t
}

func ruleTable(r *audit.Report) auditTable {
	t := auditTable{
		Name: "Rules", Title: "Nonconformities by rule", Lead: "Over the whole period. Median is of the days that those cleared had stood, oldest the days of the oldest that stands.",
		None: "There was no nonconformity.", Headings: []string{"Rule", "Before", "Opened", "Cleared", "Stand", "Waived", "Median", "Oldest"},
	}
	for _, s := range r.Rules {
		t.Rows = append(t.Rows, []any{s.Rule, s.Before, s.Opened, s.Cleared, s.Stands, s.Waived, s.Median, s.Oldest})
	}
	return t
}

// mostPoints is how many points stand beside each other on paper.
const mostPoints = 6

// rulePointTable has a column for each point, or for some of many, evenly chosen
// up to the last.
func rulePointTable(r *audit.Report) auditTable {
	t := auditTable{
		Name: "Rules over time", Title: "Open nonconformities by rule at each point", None: "There was no nonconformity that no waiver covered.", Headings: []string{"Rule"},
	}
	every := max(1, (len(r.Points)+mostPoints-1)/mostPoints)
	if every > 1 {
		t.Lead = fmt.Sprintf("Every point of %d, back from the last; the document for programs has all of them.", every)
	}
	counts := make(map[string][]any)
	columns := 0
	for i, p := range r.Points {
		if (len(r.Points)-1-i)%every != 0 {
			continue
		}
		t.Headings = append(t.Headings, p.Name)
		for _, c := range p.ByRule {
			row := counts[c.Rule]
			for len(row) < columns {
				row = append(row, 0)
			}
			counts[c.Rule] = append(row, c.Count)
		}
		columns++
	}
	for _, rule := range slices.Sorted(maps.Keys(counts)) {
		row := counts[rule]
		for len(row) < columns {
			row = append(row, 0)
		}
		t.Rows = append(t.Rows, append([]any{rule}, row...))
	}
	return t
}

// introduced says when, by whom and with what.
func introduced(s *audit.Standing) (day, author, commit string) {
	if s.Carried {
		return "before", "", ""
	}
	return audit.Day(s.Introduced), s.Introduced.Author, short(s.Introduced.ID)
}

func standingTable(r *audit.Report) auditTable {
	t := auditTable{
		Name: "Standing", Title: "Nonconformities that stand", Lead: "The oldest first. The days count from the commit that brought it to the line of first parents.",
		None: "None stands.", Headings: []string{"Record", "Rule", "What", "Introduced", "By", "Commit", "Days", "Waiver"},
	}
	list := slices.Clone(r.Standing)
	slices.SortStableFunc(list, func(a, b *audit.Standing) int { return cmp.Compare(b.Days, a.Days) })
	for _, s := range list {
		if s.Stands() {
			day, by, commit := introduced(s)
			t.Rows = append(t.Rows, []any{s.Record, s.Rule, s.Message, day, by, commit, s.Days, s.Covered()})
		}
	}
	return t
}

func clearedTable(r *audit.Report) auditTable {
	t := auditTable{
		Name: "Cleared", Title: "Nonconformities that were cleared", Lead: "The last cleared first.",
		None: "None was cleared.", Headings: []string{"Record", "Rule", "What", "Introduced", "By", "Commit", "Cleared", "By", "Commit", "Days"},
	}
	for _, s := range slices.Backward(byClearing(r.Standing)) {
		day, by, commit := introduced(s)
		t.Rows = append(t.Rows, []any{s.Record, s.Rule, s.Message, day, by, commit, audit.Day(s.Cleared), s.ClearedBy.Author, short(s.ClearedBy.ID), s.Days})
	}
	return t
}

func byClearing(all []*audit.Standing) []*audit.Standing {
	list := slices.DeleteFunc(slices.Clone(all), (*audit.Standing).Stands)
	slices.SortStableFunc(list, func(a, b *audit.Standing) int { return a.Cleared.Time.Compare(b.Cleared.Time) })
	return list
}

func personTable(r *audit.Report) auditTable {
	t := auditTable{
		Name: "People", Title: "By author", Lead: "Whose commits introduced and cleared nonconformities, on whatever branch. A commit's author is what the commit says.",
		None: "Nobody introduced or cleared any.", Headings: []string{"Author", "Introduced", "Cleared", "Stand"},
	}
	for _, p := range r.People {
		t.Rows = append(t.Rows, []any{p.Name, p.Introduced, p.Cleared, p.Stands})
	}
	return t
}

func revisionCells(r history.Revision) []any {
	return []any{audit.Day(r), short(r.ID), r.Author, r.Subject}
}
