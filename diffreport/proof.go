package diffreport

import (
	"fmt"
	"strings"
)

// proven says in sentences what is shown about the steps, and how.
func proven(o *Order, judged []string) []string {
	if !o.Executable || len(o.Steps) == 0 {
		return nil
	}
	all := []string{
		fmt.Sprintf("the %s were carried out on a model of the port sides: after each of them no side held two cables, and the last left what the records say", counted(len(o.Steps), "step")),
		"a channel that is whole between two steps is whole before or after the change: its old and new cables never meet",
	}
	if len(judged) > 0 {
		all = append(all, strings.Join(judged, ", ")+": old and new cables lie together for a while; the linter was asked about all of them at once")
	}
	return all
}
