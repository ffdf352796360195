package render

import (
	"cmp"
	"fmt"
	"maps"
	"slices"
	"strings"

	"homerun/diffreport/audit"
)

func pointTable(r *audit.Report) auditTable {
	t := auditTable{
		Name: "Conformity", Title: "Conformity over time",
		Lead: "Open counts the nonconformities that no waiver covers, waived the findings that one does. Opened and cleared are since the point before, waived ones too. " +
			"A month without a commit has no point.",
		None: "There is no commit to count at.", whole: true, Chart: trendChart(r),
		Columns: []column{
			texted("Point", ""), whole("Day", "%v"), whole("Commit", ", %v"), counted("Open", "; %v open"), counted("Opened", "; %v opened"), counted("Cleared", "; %v cleared"),
			counted("Waived", "; %v waived"), counted("Observed", "; %v observations"),
		},
	}
	for _, p := range r.Points {
		t.Rows = append(t.Rows, []any{p.Name, audit.Day(p.Revision), short(p.ID), p.Nonconformities, p.Opened, p.Cleared, p.Waived, p.Observations})
	}
	return t
}

func ruleTable(r *audit.Report) auditTable {
	t := auditTable{
		Name: "Rules", Title: "Nonconformities by rule", Lead: "Over the whole period. Median is of the days that those cleared had stood, oldest the days of the oldest that stands.",
		None: "There was no nonconformity.", whole: true,
		Columns: []column{
			texted("Rule", ""), counted("Before", "%v before"), counted("Opened", "; %v opened"), counted("Cleared", "; %v cleared"), counted("Stand", "; %v stand"),
			counted("Waived", "; %v waived"), counted("Median", "; median %v days"), counted("Oldest", "; oldest %v days"),
		},
	}
	for _, s := range r.Rules {
		t.Rows = append(t.Rows, []any{s.Rule, s.Before, s.Opened, s.Cleared, s.Stands, s.Waived, s.Median, s.Oldest})
	}
	return t
}

// mostPoints is how many points stand beside each other on paper.
const mostPoints = 6

// rulePointTable has a column for each point; on paper for some of many, evenly
// chosen up to the last.
func rulePointTable(r *audit.Report, on medium) auditTable {
	t := auditTable{
		Name: "Rules over time", Title: "Open nonconformities by rule at each point", None: "There was no nonconformity that no waiver covered.",
		Columns: []column{texted("Rule", "")}, whole: true,
	}
	every := 1
	if on == onPaper {
		every = max(1, (len(r.Points)+mostPoints-1)/mostPoints)
	}
	if every > 1 {
		t.Lead = fmt.Sprintf("One point of every %d is shown, back from the last; the spreadsheet and the document for programs have all of them.", every)
	}
	counts := make(map[string][]any)
	columns := 0
	for i, p := range r.Points {
		if (len(r.Points)-1-i)%every != 0 {
			continue
		}
		t.Columns = append(t.Columns, counted(p.Name, "; "+p.Name+" %v"))
		for _, c := range p.ByRule {
			counts[c.Rule] = append(filled(counts[c.Rule], columns), c.Count)
		}
		columns++
	}
	for _, rule := range slices.Sorted(maps.Keys(counts)) {
		t.Rows = append(t.Rows, append([]any{rule}, filled(counts[rule], columns)...))
	}
	return t
}

// filled is a row with zeros up to a length.
func filled(row []any, length int) []any {
	for len(row) < length {
		row = append(row, 0)
	}
	return row
}

// introduced says when, by whom and with what.
func introduced(s *audit.Standing) (day, author, commit string) {
	if s.Carried {
		return "before", "", ""
	}
	return audit.Day(s.Introduced), s.Introduced.Author, short(s.Introduced.ID)
}

// unnamed is what a finding says, without the label that stands beside it.
func unnamed(f *audit.Finding) string { return strings.TrimPrefix(f.Message, f.Record+": ") }

func standingTable(r *audit.Report) auditTable {
	t := auditTable{
		Name: "Standing", Title: "Nonconformities that stand", Lead: "The oldest first. The days count from the commit that brought it to the line of first parents.", None: "None stands.",
		Columns: []column{
			texted("Record", ""), texted("Rule", "%v"), long("What", ": %v"), whole("Introduced", "; introduced %v"), texted("By", " by %v"), whole("Commit", " (%v)"),
			counted("Days", "; has stood %v days"), whole("Waiver", "; waiver %v"),
		},
	}
	list := slices.Clone(r.Standing)
	slices.SortStableFunc(list, func(a, b *audit.Standing) int { return cmp.Compare(b.Days, a.Days) })
	for _, s := range list {
		if s.Stands() {
			day, by, commit := introduced(s)
			t.Rows = append(t.Rows, []any{s.Record, s.Rule, unnamed(&s.Finding), day, by, commit, s.Days, s.Covered()})
		}
	}
	return t
}

func clearedTable(r *audit.Report) auditTable {
	t := auditTable{
		Name: "Cleared", Title: "Nonconformities that were cleared", Lead: "The last cleared first.", None: "None was cleared.",
		Columns: []column{
			texted("Record", ""), texted("Rule", "%v"), long("What", ": %v"), whole("Introduced", "; introduced %v"), texted("By", " by %v"), whole("Commit", " (%v)"),
			whole("Cleared", "; cleared %v"), texted("By", " by %v"), whole("Commit", " (%v)"), counted("Days", "; stood %v days"),
		},
	}
	for _, s := range slices.Backward(byClearing(r.Standing)) {
		day, by, commit := introduced(s)
		t.Rows = append(t.Rows, []any{s.Record, s.Rule, unnamed(&s.Finding), day, by, commit, audit.Day(s.Cleared), s.ClearedBy.Author, short(s.ClearedBy.ID), s.Days})
	}
	return t
}

func byClearing(all []*audit.Standing) []*audit.Standing {
	list := slices.DeleteFunc(slices.Clone(all), (*audit.Standing).Stands)
	slices.SortStableFunc(list, func(a, b *audit.Standing) int { return a.Cleared.Time.Compare(b.Cleared.Time) })
	return list
}

func ageTable(r *audit.Report) auditTable {
	t := auditTable{
		Name: "Age", Title: "Age of findings", Lead: "How long the nonconformities that stand have stood, and those that were cleared had.", None: "There was no nonconformity.",
		whole: true, Chart: ageChart(r), Columns: []column{texted("Age", ""), counted("Stand", "%v stand"), counted("Cleared", "; %v cleared")},
	}
	if len(r.Standing) == 0 {
		return t
	}
	for _, a := range r.Ages() {
		t.Rows = append(t.Rows, []any{a.Name, a.Standing, a.Closed})
	}
	return t
}

func personTable(r *audit.Report) auditTable {
	t := auditTable{
		Name: "People", Title: "By author", Lead: "Whose commits introduced and cleared nonconformities, on whatever branch. A commit's author is what the commit says.",
		None:    "Nobody introduced or cleared any.",
		Columns: []column{texted("Author", ""), counted("Introduced", "introduced %v"), counted("Cleared", "; cleared %v"), counted("Stand", "; %v stand")},
	}
	for _, p := range r.People {
		t.Rows = append(t.Rows, []any{p.Name, p.Introduced, p.Cleared, p.Stands})
	}
	return t
}
