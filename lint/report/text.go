package report

import (
	"fmt"
	"io"
	"slices"
	"strconv"

	"homerun/lint"
	"homerun/schema"
	"homerun/schema/console"
)

// TextOptions say how findings are shown to people.
type TextOptions struct {
	console.Options
	// Revision says what was read: "working tree", "index" or a commit.
	Revision string
	// IntroducedOnly leaves out what stood there before, and counts it in one
	// line instead.
	IntroducedOnly bool
	// Most bounds how many findings are shown; 0 shows all. The rest is
	// counted, never dropped in silence.
	Most int
}

// Text writes the findings of one plant: each with its place first, so that an
// editor can go there, then label, fact and limit, and the working under it.
func Text(w io.Writer, r *lint.Report, o TextOptions) error {
	page := console.New(w, o.Options)
	shown, left := 0, 0
	for i := range r.Findings {
		f := &r.Findings[i]
		if o.IntroducedOnly && !blocks(f) {
			continue
		}
		if o.Most > 0 && shown == o.Most {
			left++
			continue
		}
		shown++
		finding(page, f)
		page.Blank()
	}
	if left > 0 {
		page.Line(0, 2, console.Plain(fmt.Sprintf("and %s more: --most 0 shows all", strconv.Itoa(left))))
		page.Blank()
	}
	summary(page, r, o)
	return page.Err()
}

func blocks(f *lint.Finding) bool {
	return f.Introduced && f.Severity == lint.Nonconformity
}

func finding(page *console.Page, f *lint.Finding) {
	page.Line(0, 4, console.In(console.Quiet, Place(f.At)+":"), console.Plain(" "), console.In(console.Strong, f.Message))
	tone := console.Notice
	if f.Severity == lint.Nonconformity {
		tone = console.Alarm
	}
	page.Line(4, 4, console.In(tone, f.Severity.String()), console.Plain(", "+f.Rule))
	page.Terms(4, terms(f)...)
	for _, n := range f.Related {
		note := n.Message
		if n.Label != "" {
			note = n.Label + ": " + note
		}
		page.Line(4, 8, console.In(console.Quiet, Place(n.At)+": "), console.Plain(note))
	}
}

// terms are the lines of the sum, then limit, source and next step.
func terms(f *lint.Finding) [][2]string {
	out := make([][2]string, 0, len(f.Working)+3)
	for _, t := range f.Working {
		out = append(out, [2]string{t.Term, t.Value})
	}
	if f.Limit != "" && !slices.ContainsFunc(f.Working, func(t lint.Term) bool { return t.Term == "limit" }) {
		out = append(out, [2]string{"limit", f.Limit})
	}
	if f.Source != "" {
		out = append(out, [2]string{"source", f.Source})
	}
	if f.Next != "" {
		out = append(out, [2]string{"next", f.Next})
	}
	return out
}

// Place writes a location as editors and terminals recognise it.
func Place(at schema.Location) string {
	return at.Path + ":" + strconv.Itoa(at.Line) + ":" + strconv.Itoa(at.Column)
}

func summary(page *console.Page, r *lint.Report, o TextOptions) {
	bad, look := r.Count(lint.Nonconformity), r.Count(lint.Observation)
	name := console.In(console.Strong, r.Plant.Name())
	if o.IntroducedOnly {
		fresh := 0
		for i := range r.Findings {
			if blocks(&r.Findings[i]) {
				fresh++
			}
		}
		tone := console.Good
		if fresh > 0 {
			tone = console.Alarm
		}
		page.Line(0, 2, name, console.Plain(", "+o.Revision+": "), console.In(tone, Counted(fresh, "nonconformity", "nonconformities")+" introduced"),
			console.Plain("; "+Counted(bad-fresh, "nonconformity", "nonconformities")+" stood before, "+Counted(look, "observation", "observations")+", "+strconv.Itoa(len(r.Waived))+" waived"))
		return
	}
	tone := console.Good
	if bad > 0 {
		tone = console.Alarm
	}
	page.Line(0, 2, name, console.Plain(", "+o.Revision+": "), console.In(tone, Counted(bad, "nonconformity", "nonconformities")),
		console.Plain(", "+Counted(look, "observation", "observations")+", "+strconv.Itoa(len(r.Waived))+" waived; "+Counted(len(r.Plant.Runs), "run", "runs")))
}

// Counted writes a number with its noun.
func Counted(n int, one, many string) string {
	if n == 1 {
		return "1 " + one
	}
	if n == 0 {
		return "no " + many
	}
	return strconv.Itoa(n) + " " + many
}
