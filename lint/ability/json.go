package ability

import (
	"io"

	"homerun/schema/console"
	"homerun/schema/plant"
	"homerun/schema/standard"
	"homerun/schema/unit"
)

// The names below are what other programs rely on: fields are added, never
// renamed or taken away.
type traceJSON struct {
	Plant    string        `json:"plant"`
	Revision string        `json:"revision"`
	Asked    string        `json:"asked"`
	Channels []channelJSON `json:"channels"`
}

type channelJSON struct {
	Stations    []stationJSON `json:"stations"`
	Metres      *lengthsJSON  `json:"metres,omitempty"`
	Connections int           `json:"connections"`
	Margins     []marginJSON  `json:"margins"`
	Answers     []answerJSON  `json:"answers"`
	Gaps        []gapJSON     `json:"gaps"`
}

// lengthsJSON is there where every run states its length.
type lengthsJSON struct {
	Links   float64 `json:"links"`
	Cords   float64 `json:"cords"`
	Assumed float64 `json:"assumed"`
	Channel float64 `json:"channel"`
}

// stationJSON is a port, a run or a cord; with nothing but its kind,
// "not-recorded", an end that nobody recorded.
type stationJSON struct {
	Kind   string `json:"kind"`
	Record string `json:"record,omitempty"`
	Port   int    `json:"port,omitempty"`
	Length string `json:"length,omitempty"`
	Cable  string `json:"cable,omitempty"`
	Space  string `json:"space,omitempty"`
}

type termJSON struct {
	Term  string `json:"term"`
	Value string `json:"value"`
}

type marginJSON struct {
	What    string     `json:"what"`
	Value   string     `json:"value"`
	Limit   string     `json:"limit"`
	Left    string     `json:"left"`
	Over    bool       `json:"over"`
	Least   bool       `json:"least"`
	Source  string     `json:"source"`
	Working []termJSON `json:"working"`
}

type answerJSON struct {
	Application string     `json:"application"`
	Answer      string     `json:"answer"`
	Because     string     `json:"because"`
	Short       string     `json:"short,omitempty"`
	Mend        string     `json:"mend,omitempty"`
	Source      string     `json:"source,omitempty"`
	Working     []termJSON `json:"working"`
}

type gapJSON struct {
	Record string `json:"record"`
	What   string `json:"what"`
}

type surveyJSON struct {
	Plant       string       `json:"plant"`
	Revision    string       `json:"revision"`
	Application string       `json:"application"`
	Space       string       `json:"space,omitempty"`
	Summary     summaryJSON  `json:"summary"`
	Results     []resultJSON `json:"results"`
}

type summaryJSON struct {
	Carries     int `json:"carries"`
	Conditional int `json:"conditional"`
	NotCarried  int `json:"not_carried"`
	Untold      int `json:"untold"`
	OtherMedium int `json:"other_medium"`
}

type resultJSON struct {
	Run string `json:"run"`
	Far string `json:"far"`
	answerJSON
}

// TraceJSON writes one document about the channels of a port or label, ended by
// a new line.
func TraceJSON(w io.Writer, name string, all []*Channel, p *plant.Plant, revision string) error {
	doc := traceJSON{Plant: p.Name(), Revision: revision, Asked: name, Channels: make([]channelJSON, 0, len(all))}
	for _, c := range all {
		doc.Channels = append(doc.Channels, c.json())
	}
	return console.JSON(w, doc)
}

func (c *Channel) json() channelJSON {
	out := channelJSON{
		Stations: make([]stationJSON, 0, len(c.Stations)), Connections: c.Connections(), Margins: make([]marginJSON, 0, len(c.Margins)),
		Answers: make([]answerJSON, 0, len(c.Answers)), Gaps: make([]gapJSON, 0, len(c.Gaps)),
	}
	if c.Known {
		out.Metres = &lengthsJSON{c.Fixed.Metres(), c.Patched.Metres(), c.Assumed.Metres(), c.Total().Metres()}
	}
	for _, s := range c.Stations {
		out.Stations = append(out.Stations, s.json())
	}
	for _, m := range c.Margins {
		out.Margins = append(out.Margins, marginJSON{m.What, m.Value, m.Limit, m.Left, m.Over, m.Least, m.Source, terms(m.Working)})
	}
	for i := range c.Answers {
		out.Answers = append(out.Answers, c.Answers[i].json())
	}
	for _, g := range c.Gaps {
		out.Gaps = append(out.Gaps, gapJSON(g))
	}
	return out
}

func (s Station) json() stationJSON {
	switch {
	case s.Run != nil:
		return stationJSON{Kind: s.Run.Kind.Name, Record: s.Run.Label, Length: whereStated(s.Run.Length), Cable: label(s.Run.Cable)}
	case s.Cord != nil:
		return stationJSON{Kind: s.Cord.Kind.Name, Record: s.Cord.Label, Length: whereStated(s.Cord.CordLength), Cable: label(s.Cord.Cable)}
	case s.Port != nil:
		out := stationJSON{Kind: s.Port.Holder.Kind.Name, Record: s.Port.Holder.Label, Port: s.Port.Number}
		if s.Port.Holder.Space != nil {
			out.Space = s.Port.Holder.Space.Label
		}
		return out
	}
	return stationJSON{Kind: "not-recorded"}
}

func whereStated(declared func() (unit.Length, bool)) string {
	l, stated := declared()
	if !stated {
		return ""
	}
	return l.String()
}

func label(c *plant.Cable) string {
	if c == nil {
		return ""
	}
	return c.Label
}

func terms(all []Term) []termJSON {
	out := make([]termJSON, 0, len(all))
	for _, t := range all {
		out = append(out, termJSON(t))
	}
	return out
}

// word is the verdict as programs read it.
func (a *Answer) word() string {
	switch a.Verdict {
	case standard.Carries:
		return "carries"
	case standard.Conditional:
		return "conditional"
	case standard.NotCarried:
		return "not-carried"
	}
	return "untold"
}

func (a *Answer) json() answerJSON {
	return answerJSON{a.Application, a.word(), a.Because, a.Short, a.Mend, a.Source, terms(a.Working)}
}

// SurveyJSON writes one document about all channels, ended by a new line.
func SurveyJSON(w io.Writer, s *Survey, p *plant.Plant, revision string) error {
	doc := surveyJSON{
		Plant: p.Name(), Revision: revision, Application: s.Application, Space: s.Space,
		Summary: summaryJSON{len(s.Of(standard.Carries)), len(s.Of(standard.Conditional)), len(s.Of(standard.NotCarried)), len(s.Of(0)), s.Other},
		Results: make([]resultJSON, 0, len(s.Results)),
	}
	for i := range s.Results {
		r := &s.Results[i]
		doc.Results = append(doc.Results, resultJSON{r.Run, r.Far, r.Answer.json()})
	}
	return console.JSON(w, doc)
}
