package render

import (
	"fmt"
	"io"
	"slices"
	"strconv"
	"strings"

	"homerun/diffreport"
	"homerun/diffreport/history"
	"homerun/schema/console"
	"homerun/schema/unit"
)

// HistoryText writes the life of a label for people, newest event first, a
// paragraph an event. The error is that of the writer.
func HistoryText(w io.Writer, h history.History, units unit.System, o console.Options) error {
	page := console.New(w, o)
	page.Line(0, 2, console.In(console.Strong, portText(h.Record, h.Port)), console.Plain(", "+kindWords(h)+": "+told(h)))
	if h.Lives > 1 {
		page.Line(2, 2, console.Plain(fmt.Sprintf("the label has been given to %d different things; each is a life of its own", h.Lives)))
	}
	life := 0
	for i := range h.Events {
		e := &h.Events[i]
		// What one commit did stands together, and who did it stands once.
		if i == 0 || h.Events[i-1].ID != e.ID || e.Life != life {
			page.Blank()
		}
		if h.Lives > 1 && e.Life != life {
			page.Line(0, 2, console.In(console.Strong, fmt.Sprintf("Life %d", e.Life)))
			page.Blank()
		}
		life = e.Life
		last := i+1 == len(h.Events) || h.Events[i+1].ID != e.ID || h.Events[i+1].Life != life
		eventText(page, h, e)
		switch terms := fieldTerms(h, e, units); {
		case !last:
			page.Terms(4, terms...)
		case i > 0 && h.Events[i-1].ID == e.ID:
			page.Terms(4, terms...)
			page.Terms(2, commitTerms(e)...)
		default:
			page.Terms(4, append(terms, commitTerms(e)...)...)
		}
	}
	return page.Err()
}

// portText is a label, with a port on it where one is meant.
func portText(label string, port int64) string {
	if port == 0 {
		return label
	}
	return label + ":" + strconv.FormatInt(port, 10)
}

func kindWords(h history.History) string {
	kind := h.Kind
	if kind == "" {
		kind = "record"
	}
	if h.Port != 0 {
		return "a port of the " + kind
	}
	return kind
}

// told counts the events, and those that nobody asked for.
func told(h history.History) string {
	events := count(len(h.Events), "event", "events")
	if h.LeftOut > 0 {
		return fmt.Sprintf("%s, %d more left out", events, h.LeftOut)
	}
	return events
}

func eventText(page *console.Page, h history.History, e *history.Event) {
	named := ""
	if e.Label != h.Record && e.Part == history.Own {
		named = e.Label + ": "
	}
	page.Line(0, 4, console.Plain(e.Time.Format("2006-01-02")+"  "), console.In(console.Strong, e.Class.String()), console.Plain("  "+named+headline(h, e)))
}

// commitTerms says who did what stands above it.
func commitTerms(e *history.Event) [][2]string {
	return stating([][2]string{
		{"by", authors(e)},
		{"commit", fmt.Sprintf("%s, %s", short(e.ID), e.Subject)},
		{"order", e.Order},
		{"ordered", strings.Join(e.Orders, "; ")},
		{"signature", e.Signature.String()},
		{"brought by", broughtBy(e)},
	})
}

func stating(terms [][2]string) [][2]string {
	return slices.DeleteFunc(terms, func(t [2]string) bool { return t[1] == "" })
}

// fieldTerms lists the fields of an event, and why it is in its class. Of what
// came or went as a whole, and of the holder of a port, what people ask first is
// enough; of what came into a space, that it did.
func fieldTerms(h history.History, e *history.Event, units unit.System) [][2]string {
	if e.Whole && e.Part != history.Own && h.Port == 0 {
		return nil
	}
	if e.Whole && h.Port != 0 {
		_, stated, _ := strings.Cut(e.Summary, ": ")
		return stating([][2]string{{"recorded", stated}, {"why", e.Why}})
	}
	var terms [][2]string
	for _, f := range e.Fields {
		before, after := f.In(units)
		terms = append(terms, [2]string{f.Name, transition(before, after)})
	}
	return stating(append(terms, [2]string{"why", e.Why}))
}

// broughtBy names the merge by which an event came, and what it says of the side
// that it joined.
func broughtBy(e *history.Event) string {
	switch {
	case e.Via == "":
		return ""
	case e.Merged.Branch() != "":
		return fmt.Sprintf("merge %s of the branch %s", short(e.Via), e.Merged.Branch())
	case e.Merged.Subject != "":
		return fmt.Sprintf("merge %s, %s", short(e.Via), e.Merged.Subject)
	}
	return "merge " + short(e.Via)
}

// headline is the event in a few words; its fields stand below it.
func headline(h history.History, e *history.Event) string {
	text, _, _ := strings.Cut(e.Summary, ": ")
	switch {
	case e.Part != history.Own:
		text = passage(h, e)
	case e.Former != "":
		text = "relabelled from " + e.Former + " to " + e.Label
	case e.Whole:
	case e.Class == diffreport.ClassAdd:
		text = "installed"
	case e.Class == diffreport.ClassRemoval:
		text = "taken out"
	case e.Class == diffreport.ClassRecordsOnly:
		text = "corrected"
	default:
		text = e.Meaning.String()
	}
	if e.Merge {
		text += ", in a merge that is as neither side had it"
	}
	return text
}

// passage says what came to a place, or went from it.
func passage(h history.History, e *history.Event) string {
	at := portText(e.Place, h.Port)
	way := "came to"
	if e.Part == history.Went {
		way = "went from"
	}
	text := fmt.Sprintf("%s %s %s %s", e.Kind, e.Label, way, at)
	if h.Port != 0 {
		text += ", its end " + e.End
	}
	return text
}

func transition(before, after string) string {
	switch {
	case before == notStated:
		return after
	case after == notStated:
		return "was " + before
	}
	return before + " became " + after
}

const notStated = "not stated"

func authors(e *history.Event) string {
	if e.Committer == "" || e.Committer == e.Author {
		return e.Author
	}
	return e.Author + ", entered by " + e.Committer
}

// short cuts a commit's id to what people copy.
func short(id string) string { return id[:min(len(id), 10)] }

func count(n int, one, many string) string {
	switch n {
	case 0:
		return "no " + many
	case 1:
		return "1 " + one
	}
	return fmt.Sprintf("%d %s", n, many)
}
