package render

import (
	"fmt"
	"slices"
	"strings"

	"homerun/diffreport/audit"
	"homerun/diffreport/history"
	"homerun/schema"
)

// A glance is one line of the summary and the section that it is about.
type glance struct {
	Text    string
	Section int
}

// glances sum the report up. Every line has its figure in the section named.
func glances(r *audit.Report, tables []auditTable) []glance {
	lines := []struct{ table, text string }{
		{"Rules", movementGlance(r)},
		{"Standing", oldestGlance(r)},
		{"Waivers", waiverGlance(r)},
		{"Signatures", signatureGlance(r)},
		{"Rewritten", lostGlance(r)},
		{"Made on the line", fmt.Sprintf("%s of records made straight on %s, of %d on that line", count(len(r.Direct), "commit", "commits"), schema.Printable(auditLineName(r)), r.Line)},
		{"Changes", count(len(r.Breaches), "change", "changes") + " against the rules of change"},
		{"Not tested since", untestedGlance(r)},
		{"Again and again", count(len(r.Repeated), "record", "records") + " changed again and again"},
	}
	all := make([]glance, 0, len(lines))
	for _, l := range lines {
		at := slices.IndexFunc(tables, func(t auditTable) bool { return t.Name == l.table })
		if l.text != "" {
			all = append(all, glance{l.text, tables[at].Number})
		}
	}
	return all
}

func movementGlance(r *audit.Report) string {
	before, opened, cleared := 0, 0, 0
	for _, s := range r.Rules {
		before, opened, cleared = before+s.Before, opened+s.Opened, cleared+s.Cleared
	}
	text := fmt.Sprintf("%s opened, %d cleared", count(opened, "nonconformity", "nonconformities"), cleared)
	if r.From != "" {
		text += fmt.Sprintf(", %d there before", before)
	}
	if r.Caught > 0 {
		text += fmt.Sprintf("; %d more came and went on branches and never reached the line", r.Caught)
	}
	return text
}

func oldestGlance(r *audit.Report) string {
	var oldest *audit.Standing
	for _, s := range r.Standing {
		if s.Stands() && (oldest == nil || s.Days > oldest.Days) {
			oldest = s
		}
	}
	if oldest == nil {
		return ""
	}
	return fmt.Sprintf("the oldest that stands has stood for %s: %s, %s", count(oldest.Days, "day", "days"), schema.Printable(oldest.Record), oldest.Rule)
}

func waiverGlance(r *audit.Report) string {
	states := make(map[string]int)
	for i := range r.Waivers {
		state := waiverState(&r.Waivers[i])
		if strings.HasPrefix(state, waiverWithdrawn) {
			state = waiverWithdrawn
		}
		states[state]++
	}
	var parts []string
	for _, state := range []string{waiverInForce, waiverLapsed, waiverExpired, waiverIdle, waiverWithdrawn} {
		if n := states[state]; n > 0 {
			parts = append(parts, fmt.Sprintf("%d %s", n, state))
		}
	}
	if len(parts) == 0 {
		return "no waivers"
	}
	return count(len(r.Waivers), "waiver", "waivers") + ": " + list(parts)
}

func signatureGlance(r *audit.Report) string {
	good := r.Signatures.Counts[history.Good]
	switch {
	case good == r.Commits:
		return "every commit has a good signature"
	case r.Signatures.Counts[history.Unsigned] == r.Commits:
		return fmt.Sprintf("none of %s is signed", count(r.Commits, "commit", "commits"))
	}
	return fmt.Sprintf("%d of %d commits have a good signature; the others: %s", good, r.Commits, strings.TrimSuffix(signatureCounts(r), fmt.Sprintf(", %s %d", history.Good, good)))
}

func lostGlance(r *audit.Report) string {
	if len(r.Formerly) == 0 {
		return "history was held against no earlier commit or tag"
	}
	commits := make(map[string]bool)
	missing := 0
	for _, l := range r.Lost {
		if l.Commit == "" {
			missing++
		}
		for _, c := range l.Commits {
			commits[c.ID] = true
		}
	}
	text := count(len(commits), "commit", "commits") + " of an earlier state not in this history"
	if missing > 0 {
		text += fmt.Sprintf("; %d of %d earlier states are not in this repository", missing, len(r.Formerly))
	}
	return text
}

func untestedGlance(r *audit.Report) string {
	n := 0
	for _, u := range r.Untested {
		if !u.EnteredSince {
			n++
		}
	}
	return count(n, "run", "runs") + " in use worked on and not tested since"
}
