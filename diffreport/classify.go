package diffreport

import (
	"fmt"

	"homerun/schema"
)

// altered weighs a record that stands on both sides.
func (c *comparison) altered(was, is subject, how string) (Change, bool) {
	fields := c.fields(was, is)
	if len(fields) == 0 && was.Label == is.Label {
		return Change{}, false
	}
	change := Change{Kind: is.Kind.Name, Label: is.Label, Before: was.Entry, After: is.Entry, Fields: fields, before: was, after: is}
	if was.Label != is.Label {
		change.Former = was.Label
	}
	for _, f := range fields {
		change.Meaning = max(change.Meaning, f.Meaning)
	}
	change.Class, change.Why = c.classify(&change, was, is, how)
	if change.Class == ClassRecordsOnly {
		change.Meaning = schema.Paper
		for i := range fields {
			fields[i].Meaning = schema.Paper
		}
	} else if change.Former != "" {
		change.Meaning = max(change.Meaning, schema.Relabelling)
	}
	return change, true
}

func (c *comparison) classify(change *Change, was, is subject, how string) (Class, string) {
	if why := c.onlyInRecords(later, is); why != "" {
		return ClassRecordsOnly, why
	}
	also := ""
	if change.Former != "" {
		also = "; its label changes too: " + how
	}
	if class, why, decided := transition(was, is); decided {
		return class, why + also
	}
	if moved := movedFields(change.Fields); len(moved) > 0 {
		return ClassMove, movedWords(moved) + also
	}
	if change.Meaning > schema.Relabelling {
		return ClassChange, workWords(is.Kind, greatest(change)) + also
	}
	if change.Former != "" {
		return ClassRelabel, "only its label changes: " + how + c.followers(was, is)
	}
	return ClassRecordsOnly, paperWords(change.Fields)
}

// onlyInRecords says why no change of a record is ever work of the crew's, empty
// where it may be.
func (c *comparison) onlyInRecords(s side, r subject) string {
	switch {
	case r.Kind.Paper:
		return article(words(r.Kind)) + " exists only in the records"
	case r.Kind.Name == schema.KindInterference:
		return "it is no part of the cabling; " + c.nearWords(s, r.Label)
	}
	return ""
}

// nearWords says what is judged again because of a source of interference.
func (c *comparison) nearWords(s side, source string) string {
	if c.near[s] == nil {
		c.near[s] = make(map[string][]string)
		for _, path := range c.plants[s].Pathways {
			for _, n := range path.Near {
				if n.Source == nil {
					continue // its record is missing
				}
				c.near[s][n.Source.Label] = append(c.near[s][n.Source.Label], path.Label)
			}
		}
	}
	if paths := c.near[s][source]; len(paths) > 0 {
		return "what lies near it is judged again, in " + inWords(tidy(paths))
	}
	return "no pathway is recorded near it"
}

func words(k *schema.Kind) string {
	if k.Name == schema.KindCable {
		return "cable type"
	}
	return k.Name
}

// followers says what keeps its place on a relabelled holder or bundle.
func (c *comparison) followers(was, is subject) string {
	h := is.holder()
	if h == nil || was.holder() == nil {
		return ""
	}
	runs, cords := portsTied(h)
	if runs+cords == 0 {
		return ""
	}
	return fmt.Sprintf("; %s and %s stay on its ports", counted(runs, "run"), counted(cords, "cord"))
}

func counted(n int, noun string) string {
	switch n {
	case 0:
		return "no " + noun + "s"
	case 1:
		return "1 " + noun
	}
	return fmt.Sprintf("%d %ss", n, noun)
}

// added weighs a record that only the later plant has.
func (c *comparison) added(is subject) Change {
	change := Change{Class: ClassAdd, Kind: is.Kind.Name, Label: is.Label, After: is.Entry, Why: "it is new", after: is}
	change.Meaning = schema.Replace
	if is.Kind.Name == schema.KindRun || is.Kind.Name == schema.KindCord {
		change.Meaning = schema.Repull
	}
	if is.Kind.Name == schema.KindCord {
		change.Meaning = schema.Repatch
	}
	if why := c.onlyRecorded(later, is); why != "" {
		change.Class, change.Meaning, change.Why = ClassRecordsOnly, schema.Paper, why
	}
	return change
}

// removed weighs a record that only the earlier plant has.
func (c *comparison) removed(was subject) Change {
	change := c.added(was)
	change.Before, change.After = change.After, schema.Entry{}
	change.before, change.after = was, subject{}
	change.Class, change.Why = ClassRemoval, "it is taken out"
	if why := c.onlyRecorded(earlier, was); why != "" {
		change.Class, change.Meaning, change.Why = ClassRecordsOnly, schema.Paper, why
	}
	return change
}

// onlyRecorded says why a record that one side does not have is still nothing
// to do on site.
func (c *comparison) onlyRecorded(s side, r subject) string {
	if why := c.onlyInRecords(s, r); why != "" {
		return why
	}
	switch {
	case !onSite(r.Kind):
		return article(r.Kind.Name) + " is recorded, not built by the crew"
	case r.Kind.Name == schema.KindBundle && !c.bundleWork(s, r):
		return "a bundle is how its runs are recorded: the runs themselves stay"
	case r.stage() == onPaper:
		return "it is only planned: nothing is installed yet"
	case r.stage() == outOfUse && s == later:
		return "it is found withdrawn in place: the records only catch up"
	}
	return ""
}

// bundleWork says whether any run of a bundle is itself without a partner.
func (c *comparison) bundleWork(s side, r subject) bool {
	for _, in := range r.Inner {
		i := c.place(s, key{in.Kind, in.Label})
		if i >= 0 && c.sides[s][i].Record == in && c.partner[s][i] < 0 {
			return true
		}
	}
	return false
}

// onSite says whether a change of the kind can send anybody to site: whether
// any of its fields means work.
func onSite(k *schema.Kind) bool {
	for _, f := range k.Fields {
		if f.Site > schema.Relabelling {
			return true
		}
	}
	return false
}
