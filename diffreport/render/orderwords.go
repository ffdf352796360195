package render

import (
	"fmt"
	"strings"

	"homerun/diffreport"
)

// verdict says whether the steps work.
func verdict(o *diffreport.Order) string {
	switch {
	case !o.Executable:
		return "This change can not be carried out as it is recorded: see the clashes."
	case len(o.Steps) == 0:
		return "Nobody has to go to site."
	}
	return "The steps can be carried out in their order: no port side is used twice."
}

// why is what a commit's message says beside its subject: the first paragraph,
// where the author gave one.
func why(c diffreport.Commit) string {
	first, _, _ := strings.Cut(c.Body, "\n\n")
	return cut(strings.Join(strings.Fields(first), " "))
}

func revision(id string) string {
	switch id {
	case "":
		return "nothing: the records begin here"
	case "index":
		return "what is staged"
	case "worktree":
		return "the working tree"
	}
	return "commit " + short(id)
}

// counts lists the classes that there is anything in.
func counts(n diffreport.Counts) string {
	parts := n.Words()
	if len(parts) == 0 {
		return "none: the records say the same"
	}
	return strings.Join(parts, ", ")
}

// roomFor says why a cable comes off that stays.
func roomFor(cable string) string { return "off for a moment, to make room for " + cable }

// stripFor is a strip of labels among the labels.
func stripFor(holder string) string { return "a strip for the ports of " + holder }

// numbers writes numbers with the noun that they number.
func numbers(noun string, all []int) string {
	if len(all) > 1 {
		noun += "s"
	}
	return noun + " " + spans(all)
}

// spans writes numbers, rows of neighbours drawn together.
func spans(all []int) string {
	var parts []string
	for i := 0; i < len(all); {
		j := i
		for j+1 < len(all) && all[j+1] == all[j]+1 {
			j++
		}
		switch {
		case j > i+1:
			parts = append(parts, fmt.Sprintf("%d to %d", all[i], all[j]))
		case j > i:
			parts = append(parts, fmt.Sprint(all[i]), fmt.Sprint(all[j]))
		default:
			parts = append(parts, fmt.Sprint(all[i]))
		}
		i = j + 1
	}
	return list(parts)
}
