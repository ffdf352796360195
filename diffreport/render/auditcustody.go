package render

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"homerun/diffreport/audit"
	"homerun/diffreport/history"
)

// doubts are the states of signatures, the worst first.
func doubts() []history.Signature {
	return []history.Signature{history.Bad, history.RevokedKey, history.ExpiredKey, history.UnknownKey, history.NotChecked, history.Unsigned, history.Good}
}

func signatureTable(r *audit.Report, on medium) auditTable {
	t := auditTable{
		Name: "Signatures", Title: "Commits without a good signature", Lead: "The worst first. All commits by signature: " + signatureCounts(r) + ".",
		None: "Every commit is signed, and every signature is good.", Columns: append(revisionColumns(), texted("Signature", "; signature: %v")),
	}
	if n := r.Signatures.Counts[history.Unsigned]; on == onPaper && n == r.Commits && n > 0 {
		// A list of every commit tells no more than this.
		t.None = fmt.Sprintf("No commit is signed, %d of %d. Names and times in them are what somebody typed.", n, n)
		return t
	}
	list := slices.Clone(r.Signatures.Doubtful)
	rank := func(c history.Revision) int { return slices.Index(doubts(), c.Signature) }
	slices.SortStableFunc(list, func(a, b history.Revision) int { return cmp.Compare(rank(a), rank(b)) })
	for _, c := range list {
		t.Rows = append(t.Rows, append(revisionCells(c), c.Signature.String()))
	}
	return t
}

func signatureCounts(r *audit.Report) string {
	var counts []string
	for _, s := range doubts() {
		if n := r.Signatures.Counts[s]; n > 0 {
			counts = append(counts, fmt.Sprintf("%s %d", s, n))
		}
	}
	return list(counts)
}

func lostTable(r *audit.Report) auditTable {
	t := auditTable{
		Name: "Rewritten", Title: "Rewritten history", Lead: "What an earlier commit or tag leads to and the last commit does not.",
		None:    "Nothing was held against this history: name commits or tags of an earlier audit with --formerly.",
		Columns: []column{texted("Formerly", ""), whole("Day", "%v"), whole("Commit", ", %v"), texted("Author", " by %v"), long("Subject", ": %v")},
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
		Name: "Made on the line", Title: "Commits of records made straight on " + auditLineName(r),
		Lead: "They came in by no merge that this history shows; entered by whom, where that was not the author.", None: "Every change of records came in by a merge.",
		Columns: append(revisionColumns(), texted("Entered by", "; entered by %v")),
	}
	for _, c := range r.Direct {
		by := c.Committer
		if by == c.Author {
			by = ""
		}
		t.Rows = append(t.Rows, append(revisionCells(c), by))
	}
	return t
}

func auditLineName(r *audit.Report) string {
	if r.Branch == "" {
		return "the line of first parents"
	}
	return r.Branch
}

func breachTable(r *audit.Report) auditTable {
	t := auditTable{
		Name: "Changes", Title: "Changes against the rules of change", Lead: "States that were jumped over, labels given on in one commit, tests edited where they stand, waivers widened.",
		None: "There was none.", Columns: append(revisionColumns(), texted("Rule", "; %v"), texted("Record", ", %v"), long("What", ": %v")),
	}
	for _, b := range r.Breaches {
		t.Rows = append(t.Rows, append(revisionCells(b.At), b.Rule, b.Record, unnamed(&b.Finding)))
	}
	return t
}

func untestedTable(r *audit.Report, on medium) auditTable {
	t := auditTable{
		Name: "Not tested since", Title: "Work on cables without a later test", None: "Every such run has a later test.",
		Columns: []column{
			texted("Run", ""), texted("Work", "%v"), whole("Day", ", %v"), whole("Commit", " (%v)"), texted("Author", " by %v"), texted("Newest test", "; newest test: %v"),
		},
	}
	later := 0
	for _, u := range r.Untested {
		if u.EnteredSince {
			later++
			continue
		}
		tested := "none"
		if u.Test != "" {
			tested = strings.TrimPrefix(u.Tested.String()+", "+u.Test, ", ")
		}
		row := []any{u.Label, u.Class, audit.Day(u.Changed), short(u.Changed.ID), u.Changed.Author, tested}
		if n := len(t.Rows); on == onPaper && n > 0 && slices.Equal(t.Rows[n-1][1:], row[1:]) {
			t.Rows[n-1][0] = fmt.Sprint(t.Rows[n-1][0], ", ", u.Label)
			continue
		}
		t.Rows = append(t.Rows, row)
	}
	t.Lead = "Runs in use that a commit of the period installed, moved or exchanged, and whose newest test is dated before that commit."
	if later > 0 {
		said := fmt.Sprintf("Of %d more the newest test is dated before the commit, but was first written down with it or later: it is taken for one made after the work.", later)
		t.Lead += " " + said
		t.None += " " + said
	}
	return t
}

func repeatedTable(r *audit.Report) auditTable {
	t := auditTable{
		Name: "Again and again", Title: "Records changed again and again", Lead: fmt.Sprintf("By %d commits or more, not counting the one that brought them.", audit.Often),
		None: "There is none.", Columns: []column{texted("Record", ""), texted("Kind", "%v"), counted("Times", "; %v times"), whole("First", ", %v"), whole("Last", " to %v")},
	}
	for _, p := range r.Repeated {
		t.Rows = append(t.Rows, []any{p.Label, p.Kind, p.Times, audit.Day(p.First), audit.Day(p.Last)})
	}
	return t
}
