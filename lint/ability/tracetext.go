package ability

import (
	"fmt"
	"io"
	"slices"
	"strconv"
	"strings"

	"homerun/schema"
	"homerun/schema/console"
	"homerun/schema/plant"
	"homerun/schema/standard"
)

// TextOptions say how a report is shown to people.
type TextOptions struct {
	console.Options
	// Revision says what was read: "working tree" or a commit.
	Revision string
}

// TraceText draws channels from end to end, with what is left to each limit and
// what they carry.
func TraceText(w io.Writer, name string, channels []*Channel, p *plant.Plant, o TextOptions) error {
	page := console.New(w, o.Options)
	page.Line(0, 2, console.In(console.Strong, name), console.Plain(", "+p.Name()+", "+o.Revision))
	if len(channels) == 0 {
		page.Line(2, 2, console.Plain("nothing is on it: it is free"))
	}
	for _, c := range channels {
		page.Blank()
		for _, s := range c.Stations {
			station(page, c, s)
		}
		totals(page, c)
		margins(page, c)
		answers(page, c)
		gaps(page, c)
	}
	return page.Err()
}

func station(page *console.Page, c *Channel, s Station) {
	in := c.Plant.Units
	switch {
	case s.Run != nil:
		text := "run " + schema.Printable(s.Run.Label)
		page.Line(4, 8, console.Plain("| "), console.In(console.Strong, text), console.Plain(joined(lengthWords(s.Run.Length, in), cableWords(s.Run.Cable), stateWords(s.Run))))
		if way := wayWords(s.Run, in); way != "" {
			page.Line(4, 8, console.Plain("|   "), console.In(console.Quiet, way))
		}
	case s.Cord != nil:
		page.Line(4, 8, console.Plain("| "), console.In(console.Strong, "cord "+schema.Printable(s.Cord.Label)), console.Plain(joined(lengthWords(s.Cord.CordLength, in), cableWords(s.Cord.Cable))))
	case s.Port != nil:
		h := s.Port.Holder
		page.Line(2, 6, console.Plain(holderWords(h)+" "), console.In(console.Strong, schema.Printable(s.Port.String())), console.Plain(joined(hardwareWords(h), spaceWords(h.Space))))
	default:
		page.Line(2, 6, console.In(console.Quiet, "what is plugged in here is not recorded"))
	}
}

func totals(page *console.Page, c *Channel) {
	in := c.Plant.Units
	heading(page, "together")
	var terms [][2]string
	if len(c.Links) > 0 {
		terms = append(terms, [2]string{"fixed cable", lengthWords(c.LinkLength, in)})
	}
	cords := c.Patched.Text(in)
	switch {
	case len(c.Cords) == 0 && c.Assumed > 0:
		cords = "none recorded, " + c.Assumed.Text(in) + " assumed"
	case len(c.Cords) == 0:
		cords = "none recorded"
	case c.Assumed > 0:
		cords += ", and " + c.Assumed.Text(in) + " assumed for what is not recorded"
	}
	terms = append(terms, [2]string{"cords", cords})
	if c.Known {
		terms = append(terms, [2]string{"channel", c.Total().Text(in)})
	}
	page.Terms(2, append(terms, [2]string{"connections", strconv.Itoa(c.Connections())})...)
}

func heading(page *console.Page, text string) {
	page.Blank()
	page.Line(0, 2, console.In(console.Strong, text))
}

func margins(page *console.Page, c *Channel) {
	if len(c.Margins) == 0 {
		return
	}
	heading(page, "margins")
	for _, m := range c.Margins {
		limit, over := ", limit ", "over by "
		if m.Least {
			limit, over = ", needs ", "short by "
		}
		line := []console.Span{console.Plain(m.What + ": " + m.Value + limit + m.Limit)}
		switch {
		case m.Over:
			line = append(line, console.Plain("; "), console.In(console.Alarm, over+strings.TrimPrefix(m.Left, "-")))
		case m.Left != "":
			line = append(line, console.Plain("; "), console.In(console.Good, m.Left+" left"))
		}
		page.Line(2, 6, line...)
		for _, t := range m.Working {
			page.Line(6, 8, console.In(console.Quiet, t.Term+": "+t.Value))
		}
		page.Line(6, 8, console.In(console.Quiet, m.Source))
	}
}

// answers lists what the channel carries in one line, and what it does not with
// the limit that stops it.
func answers(page *console.Page, c *Channel) {
	if len(c.Answers) == 0 {
		return
	}
	heading(page, "carries")
	var carried []string
	for _, a := range c.Answers {
		if a.Verdict == standard.Carries {
			carried = append(carried, a.Application)
		}
	}
	if len(carried) == 0 {
		carried = []string{"none of the applications in any case"}
	}
	page.Line(2, 2, console.In(console.Good, strings.Join(carried, ", ")))
	for _, group := range []struct {
		head    string
		verdict standard.Verdict
		tone    console.Tone
	}{{"on a condition", standard.Conditional, console.Notice}, {"does not carry", standard.NotCarried, console.Alarm}, {"can not be told", 0, console.Quiet}} {
		some := sameReason(c.Answers, group.verdict)
		if len(some) == 0 {
			continue
		}
		heading(page, group.head)
		for _, r := range some {
			page.Line(2, 6, console.In(group.tone, strings.Join(r.names, ", ")), console.Plain(": "+r.because))
			if r.source != "" {
				page.Line(6, 8, console.In(console.Quiet, r.source))
			}
		}
	}
}

// reason is applications that one and the same limit decides.
type reason struct {
	names           []string
	because, source string
}

func sameReason(all []Answer, v standard.Verdict) []reason {
	var out []reason
	for _, a := range all {
		if a.Verdict != v {
			continue
		}
		i := slices.IndexFunc(out, func(r reason) bool { return r.because == a.Because })
		if i < 0 {
			out = append(out, reason{names: []string{a.Application}, because: a.Because, source: a.Source})
			continue
		}
		out[i].names = append(out[i].names, a.Application)
		out[i].source = sharedSource(out[i].source, a.Source)
	}
	return out
}

// sharedSource is the document of two clauses.
func sharedSource(a, b string) string {
	if a == b {
		return a
	}
	document, _, _ := strings.Cut(a, ",")
	if other, _, _ := strings.Cut(b, ","); other != document {
		return a + "; " + b
	}
	if strings.Contains(a+b, "check the printed standard") {
		return document + ", the clause of each; some unconfirmed or disputed: check the printed standard"
	}
	return document + ", the clause of each"
}

func gaps(page *console.Page, c *Channel) {
	if len(c.Gaps) == 0 {
		return
	}
	heading(page, "what the records do not tell")
	for _, g := range c.Gaps {
		page.Line(2, 6, console.Plain(fmt.Sprintf("%s: %s", g.Record, g.What)))
	}
}
