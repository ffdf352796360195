package audit

import (
	"fmt"

	"homerun/diffreport/history"
)

// unknown says in sentences what the report can not tell.
func (a *Audit) unknown(about *About) []string {
	var list []string
	add := func(set bool, format string, args ...any) {
		if set {
			list = append(list, fmt.Sprintf(format, args...))
		}
	}
	add(about.Shallow, "this clone is shallow: what happened before its first commits is not here")
	add(about.Partial, "this clone is partial: what it has not fetched was not read")
	add(about.Replaced, "refs/replace puts other objects in the place of some commits or files, and git follows it")
	counts := a.custody.signatures.Counts
	add(counts[history.Unsigned] > 0, "who wrote %s without a signature: names and times in them are what somebody typed", commitCount(counts[history.Unsigned]))
	add(!about.Keys && counts[history.NotChecked] > 0, "whether the signatures of %s are good: no keys were named to check them with (--keys FILE)", commitCount(counts[history.NotChecked]))
	add(counts[history.UnknownKey] > 0, "whether the signatures of %s are good: their keys are not among those named", commitCount(counts[history.UnknownKey]))
	add(len(a.custody.backwards) > 0, "when %s were made: their clocks are behind those of the commits before them, the first %s", commitCount(len(a.custody.backwards)), short(first(a.custody.backwards)))
	add(len(a.custody.unread) > 0, "what the records said in full at %s: parts of them could not be read, first at %s", commitCount(len(a.custody.unread)), short(first(a.custody.unread)))
	add(about.Branch == "", "which branch the line of first parents belongs to: the last commit was named by no branch")
	add(len(about.Formerly) == 0, "whether history was rewritten and its tags with it: name a commit or tag of an earlier audit with --formerly")
	list = append(list,
		"when commits reached this repository, and who brought them: git keeps the times that authors and committers wrote down, not when they were pushed",
		"whether commits on the line of first parents were reviewed: a change that was squashed or rebased before it came in looks like one made there",
		"whether the records are true: a commit is what somebody wrote, not what stands on site",
		"what happened between two commits: findings are dated by the commits around them, and waivers judged by a commit's own day")
	return list
}

func first(list []history.Revision) string {
	if len(list) == 0 {
		return ""
	}
	return list[0].ID
}

func short(id string) string { return id[:min(len(id), 10)] }

func commitCount(n int) string {
	if n == 1 {
		return "1 commit"
	}
	return fmt.Sprintf("%d commits", n)
}
