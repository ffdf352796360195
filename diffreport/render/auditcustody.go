package render

import (
	"fmt"
	"strings"

	"homerun/diffreport/audit"
	"homerun/diffreport/history"
)

func waiverTable(r *audit.Report) auditTable {
	t := auditTable{
		Name: "Waivers", Title: "Waivers", Lead: "Granted is what the record states; entered is the commit that put it there. Used counts the nonconformities that it ever covered.",
		None: "There is no waiver.", Headings: []string{"Waiver", "State", "Rule", "Records", "Granted", "Entered", "By", "Last day", "Used", "Covers now"},
	}
	for _, l := range r.Waivers {
		t.Rows = append(t.Rows, []any{
			l.Label, waiverState(&l), l.Rule, list(l.Records), l.Granted, entered(l.Entered), l.Entered.Author, l.Expires.String(), l.Findings, l.Covers,
		})
	}
	return t
}

func waiverState(l *audit.WaiverLife) string {
	switch {
	case l.Withdrawn.ID != "":
		return "withdrawn " + audit.Day(l.Withdrawn)
	case l.Expired && l.Covers > 0:
		return "expired since"
	case l.Expired:
		return "expired"
	case l.Covers == 0:
		return "covers nothing"
	}
	return "in force"
}

func entered(r history.Revision) string {
	if r.ID == "" {
		return "before"
	}
	return audit.Day(r) + ", " + short(r.ID)
}

func waiverChangeTable(r *audit.Report) auditTable {
	t := auditTable{
		Name: "Waiver changes", Title: "Waivers changed after they were entered",
		None: "None was changed.", Headings: []string{"Waiver", "Day", "Commit", "By", "What changed"},
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

func signatureTable(r *audit.Report) auditTable {
	var counts []string
	for _, s := range []history.Signature{history.Good, history.Bad, history.UnknownKey, history.ExpiredKey, history.RevokedKey, history.NotChecked, history.Unsigned} {
		if n := r.Signatures.Counts[s]; n > 0 {
			counts = append(counts, fmt.Sprintf("%s: %d", s, n))
		}
	}
	t := auditTable{
		Name: "Signatures", Title: "Commits without a good signature", Lead: "All commits by signature: " + strings.Join(counts, ", ") + ".",
		None: "Every commit is signed, and every signature is good.", Headings: []string{"Day", "Commit", "Author", "Subject", "Signature"},
	}
	for _, c := range r.Signatures.Doubtful {
		t.Rows = append(t.Rows, append(revisionCells(c), c.Signature.String()))
	}
	return t
}

func lostTable(r *audit.Report) auditTable {
	t := auditTable{
		Name: "Rewritten", Title: "Rewritten history", Lead: "What an earlier commit or tag leads to and the last commit does not.",
		None: "Nothing was held against this history: name commits or tags of an earlier audit with --formerly.", Headings: []string{"Formerly", "Day", "Commit", "Author", "Subject"},
	}
	if len(r.Formerly) > 0 {
		t.None = "The last commit leads to everything that " + list(each(r.Formerly, func(e audit.Earlier) string { return e.Name })) + " led to."
	}
	for _, l := range r.Lost {
		if l.Commit == "" {
			t.Rows = append(t.Rows, []any{l.Ref, "", "", "", "is not in this repository"})
		}
		for _, c := range l.Commits {
			t.Rows = append(t.Rows, append([]any{l.Ref}, revisionCells(c)...))
		}
	}
	return t
}

func directTable(r *audit.Report) auditTable {
	t := auditTable{
		Name: "Made on the line", Title: "Commits of records made straight on the line of first parents",
		Lead: "They came in by no merge that this history shows.", None: "Every change of records came in by a merge.",
		Headings: []string{"Day", "Commit", "Author", "Subject", "Entered by"},
	}
	for _, c := range r.Direct {
		t.Rows = append(t.Rows, append(revisionCells(c), c.Committer))
	}
	return t
}

func breachTable(r *audit.Report) auditTable {
	t := auditTable{
		Name: "Changes", Title: "Changes against the rules of change", Lead: "States that were jumped over, labels given on in one commit, tests edited where they stand, waivers widened.",
		None: "There was none.", Headings: []string{"Day", "Commit", "Author", "Subject", "Rule", "Record", "What"},
	}
	for _, b := range r.Breaches {
		t.Rows = append(t.Rows, append(revisionCells(b.At), b.Rule, b.Record, b.Message))
	}
	return t
}

func untestedTable(r *audit.Report) auditTable {
	t := auditTable{
		Name: "Not tested since", Title: "Work on cables without a later test",
		None: "Every such run has a later test.", Headings: []string{"Run", "Work", "Day", "Commit", "Author", "Newest test"},
	}
	with := 0
	for _, u := range r.Untested {
		if u.EnteredSince {
			with++
			continue
		}
		tested := "none"
		if u.Test != "" {
			tested = u.Tested.String() + ", " + u.Test
		}
		t.Rows = append(t.Rows, []any{u.Label, u.Class, audit.Day(u.Changed), short(u.Changed.ID), u.Changed.Author, tested})
	}
	t.Lead = "Runs in use that a commit of the period installed, moved or exchanged, and whose newest test is dated before that commit."
	if with > 0 {
		said := fmt.Sprintf("Of %d more the newest test is dated before the commit, but was written down with it or later: it is taken for one made after the work.", with)
		t.Lead += " " + said
		t.None += " " + said
	}
	return t
}

func repeatedTable(r *audit.Report) auditTable {
	t := auditTable{
		Name: "Again and again", Title: "Records changed again and again", Lead: fmt.Sprintf("By %d commits or more, not counting the one that brought them.", audit.Often),
		None: "There is none.", Headings: []string{"Record", "Kind", "Times", "First", "Last"},
	}
	for _, p := range r.Repeated {
		t.Rows = append(t.Rows, []any{p.Label, p.Kind, p.Times, audit.Day(p.First), audit.Day(p.Last)})
	}
	return t
}
