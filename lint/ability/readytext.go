package ability

import (
	"fmt"
	"io"
	"slices"
	"strings"

	"homerun/schema"
	"homerun/schema/console"
	"homerun/schema/plant"
	"homerun/schema/standard"
)

// SurveyOptions say how a survey is shown to people.
type SurveyOptions struct {
	TextOptions
	// Most bounds how many channels of one answer are listed; 0 lists all.
	// The rest is counted, never dropped in silence.
	Most int
}

// SurveyText lists which channels carry an application, which do so on a
// condition and which do not, with what they miss and what would mend it.
func SurveyText(w io.Writer, s *Survey, p *plant.Plant, o SurveyOptions) error {
	page := console.New(w, o.Options)
	where := p.Name()
	if s.Space != "" {
		where = s.Space + " of " + where
	}
	page.Line(0, 2, console.In(console.Strong, s.Application), console.Plain(", "+where+", "+o.Revision))
	for _, g := range []struct {
		head    string
		verdict standard.Verdict
		tone    console.Tone
	}{
		{"carries", standard.Carries, console.Good},
		{"carries on a condition", standard.Conditional, console.Notice},
		{"does not carry", standard.NotCarried, console.Alarm},
		{"can not be told", 0, console.Quiet},
	} {
		some := s.Of(g.verdict)
		page.Blank()
		page.Line(0, 2, console.In(g.tone, g.head), console.Plain(": "+channels(len(some))))
		if g.verdict == standard.Carries {
			names(page, some, o.Most)
		} else {
			reasons(page, some, o.Most)
		}
	}
	if s.Other > 0 {
		page.Blank()
		page.Line(0, 2, console.In(console.Quiet, channels(s.Other)+" of another medium "+be(s.Other)+" not asked"))
	}
	return page.Err()
}

func be(n int) string {
	if n == 1 {
		return "was"
	}
	return "were"
}

func channels(n int) string {
	switch n {
	case 0:
		return "none"
	case 1:
		return "1 channel"
	}
	return fmt.Sprintf("%d channels", n)
}

// names lists the channels that carry, by their runs.
func names(page *console.Page, some []Result, most int) {
	shown, left := cut(some, most)
	if len(shown) == 0 {
		return
	}
	labels := make([]string, len(shown))
	for i, r := range shown {
		labels[i] = schema.Printable(r.Run)
		if i > 0 && shown[i-1].Run == r.Run || i+1 < len(shown) && shown[i+1].Run == r.Run {
			labels[i] = r.name() // several fibres of one run
		}
	}
	page.Line(2, 2, console.Plain(strings.Join(labels, ", ")))
	more(page, left)
}

// reasons lists channels with what stops them; those that one reason and one
// remedy hold for stand together.
func reasons(page *console.Page, some []Result, most int) {
	shown, left := cut(some, most)
	type group struct {
		because, mend, source string
		runs                  []string
	}
	var groups []*group
	for _, r := range shown {
		i := slices.IndexFunc(groups, func(g *group) bool { return g.because == r.Because && g.mend == r.Mend && g.source == r.Source })
		if i < 0 {
			i = len(groups)
			groups = append(groups, &group{because: r.Because, mend: r.Mend, source: r.Source})
		}
		groups[i].runs = append(groups[i].runs, r.name())
	}
	for _, g := range groups {
		page.Line(2, 6, console.In(console.Strong, strings.Join(g.runs, ", ")), console.Plain(": "+g.because))
		terms := [][2]string{}
		if g.mend != "" {
			terms = append(terms, [2]string{"mend", g.mend})
		}
		if g.source != "" {
			terms = append(terms, [2]string{"source", g.source})
		}
		page.Terms(6, terms...)
	}
	more(page, left)
}

// name is the run with its far end.
func (r *Result) name() string {
	if r.Far == "" {
		return schema.Printable(r.Run)
	}
	return schema.Printable(r.Run) + " (" + schema.Printable(r.Far) + ")"
}

func cut(some []Result, most int) (shown []Result, left int) {
	if most > 0 && len(some) > most {
		return some[:most], len(some) - most
	}
	return some, 0
}

func more(page *console.Page, left int) {
	if left > 0 {
		page.Line(2, 2, console.Plain(fmt.Sprintf("and %d more: --most 0 shows all", left)))
	}
}
