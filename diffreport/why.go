package diffreport

import (
	"fmt"
	"strings"

	"homerun/schema"
)

// What a change is in its class for is said as somebody on site would want to
// hear it: what happens there, not which field of the records differs.

// movedFields finds the fields by which ends or the hardware itself go to
// another place. A place that only one side states is no move.
func movedFields(fields []FieldChange) []*FieldChange {
	var moved []*FieldChange
	for i := range fields {
		f := &fields[i]
		switch {
		case isEnd(f.Name):
			if f.Before != notStated && f.After != notStated {
				moved = append(moved, f)
			}
		case f.Meaning == schema.Relocate && !strings.Contains(f.Name, " "):
			moved = append(moved, f)
		}
	}
	return moved
}

func isEnd(field string) bool { return field == schema.RunFrom.Name || field == schema.RunTo.Name }

func movedWords(moved []*FieldChange) string {
	all := make([]string, len(moved))
	for i, f := range moved {
		switch {
		case isEnd(f.Name):
			all[i] = "its end at " + f.Before + " goes to " + f.After
		case f.Name == schema.PathwayThrough.Name:
			all[i] = "it leads through " + f.After + " and no longer through " + f.Before
		case f.Name == schema.PanelSpace.Name:
			all[i] = "it goes from " + f.Before + " to " + f.After
		default:
			all[i] = fmt.Sprintf("it goes from %s %s to %s", f.Name, f.Before, f.After)
		}
	}
	return strings.Join(all, "; ")
}

// greatest is the field that asks most of the crew.
func greatest(change *Change) *FieldChange {
	for i := range change.Fields {
		if change.Fields[i].Meaning == change.Meaning {
			return &change.Fields[i]
		}
	}
	return &FieldChange{}
}

// workWords says what one field asks of the crew.
func workWords(k *schema.Kind, f *FieldChange) string {
	reason := f.why
	if reason == "" {
		reason = becomes(f)
	}
	return reason + ": " + taskWords(k, f)
}

func becomes(f *FieldChange) string {
	switch {
	case f.Before == notStated:
		return f.Name + " " + f.After
	case f.After == notStated:
		return "no " + f.Name + " " + f.Before + " any more"
	}
	return f.Name + " " + f.Before + " becomes " + f.After
}

func taskWords(k *schema.Kind, f *FieldChange) string {
	switch f.Meaning {
	case schema.Retest:
		return "what it is connected to is measured again"
	case schema.Repatch, schema.Reterminate:
		switch k.Name {
		case schema.KindCord:
			return "it is plugged in there"
		case schema.KindRun:
			return "its end is terminated there"
		}
		return "the runs on it are terminated again"
	case schema.Rebond:
		if strings.HasPrefix(f.Name, schema.KindCrossing+" ") {
			return "the fire-stop is made anew"
		}
		return "its bond is made anew"
	case schema.Replace, schema.Relocate:
		if k.Name == schema.KindPathway {
			return "the pathway is altered"
		}
		return "another " + k.Name + " takes its place"
	case schema.Reroute, schema.Repull:
		return "a new cable is pulled and the old one taken out"
	case schema.Paper, schema.Relabelling:
	}
	return "it is worked on"
}

// paperWords says what is corrected where nobody goes to site.
func paperWords(fields []FieldChange) string {
	var why, corrected []string
	for _, f := range fields {
		if f.why != "" {
			why = append(why, f.why)
		} else {
			corrected = append(corrected, f.Name)
		}
	}
	switch {
	case len(corrected) == 1:
		why = append(why, "its "+corrected[0]+" is corrected")
	case len(corrected) > 1:
		why = append(why, "its "+inWords(corrected)+" are corrected")
	}
	return strings.Join(why, "; ")
}

// article puts the indefinite article before a noun.
func article(noun string) string {
	if noun != "" && strings.ContainsRune("aeiou", rune(noun[0])) {
		return "an " + noun
	}
	return "a " + noun
}

// inWords joins a list as a sentence does: "1A, 1B and 2C".
func inWords(list []string) string {
	if n := len(list); n > 1 {
		return strings.Join(list[:n-1], ", ") + " and " + list[n-1]
	}
	return strings.Join(list, "")
}
