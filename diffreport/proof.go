package diffreport

import "fmt"

// proven says in sentences what is shown about the steps, and how.
func proven(o *Order, judged []string, passed *followed) []string {
	if !o.Executable || len(o.Steps) == 0 {
		return nil
	}
	all := []string{
		fmt.Sprintf("The %s were carried out on a model of the port sides: after each of them no side held two cables, and the last left what the records say", counted(len(o.Steps), "step")),
		"A new cable is plugged in only when the old ones of its channel are off: the order of the steps sees to it, so that a channel that is whole between two steps is whole before or after the change",
	}
	if len(judged) > 0 {
		all = append(all, "Old and new cables lie together for a while in "+inWords(judged)+": the linter was asked about all of them at once")
	}
	return append(all, passed.words()...)
}

// words say which states of the site the linter was asked about.
func (f *followed) words() []string {
	const found = "the linter judged what the change can touch and found no nonconformity that stands neither before nor after"
	const loose = "Left out is what only the records are judged by, and that a cable between two steps is terminated at no end or one"
	switch f.judged {
	case 0:
		return nil
	case f.states:
		each := "after each of them"
		if f.states == 1 {
			each = "after it"
		}
		return []string{fmt.Sprintf("The site changes %s: %s %s", times(f.states), each, found), loose}
	}
	return []string{fmt.Sprintf("The site changes %s: after %d of them, evenly spread, %s", times(f.states), f.judged, found), loose}
}

func times(n int) string {
	if n == 1 {
		return "once"
	}
	return fmt.Sprintf("%d times", n)
}
