package render

import (
	"io"
	"time"

	"homerun/diffreport"
	"homerun/schema/console"
	"homerun/schema/unit"
)

// The names below are what other programs rely on: fields are added, never
// renamed or taken away. Quantities are metric, whatever the plant prints.
type orderDocument struct {
	Plant      string         `json:"plant"`
	Number     string         `json:"number"`
	Base       string         `json:"base"`
	Head       string         `json:"head"`
	Executable bool           `json:"executable"`
	Clashes    []string       `json:"clashes"`
	Summary    countsJSON     `json:"summary"`
	Commits    []commitJSON   `json:"commits"`
	Changes    []changeJSON   `json:"changes"`
	Steps      []stepJSON     `json:"steps"`
	Outages    []outageJSON   `json:"outages"`
	Materials  []materialJSON `json:"materials"`
	Labels     []string       `json:"labels"`
	Strips     []string       `json:"port_strips"`
	Tests      []testJSON     `json:"tests"`
	Cautions   []string       `json:"cautions"`
	Duties     []string       `json:"duties"`
	Decided    []string       `json:"decided_by"`
	Proven     []string       `json:"proven"`
	BackOut    []backJSON     `json:"back_out"`
	Findings   findingsJSON   `json:"findings"`
}

// backJSON is how one step is taken back; the last step stands first.
type backJSON struct {
	Step  int    `json:"step"`
	Visit int    `json:"visit"`
	Space string `json:"space"`
	Text  string `json:"text"`
}

type countsJSON struct {
	Moves       int `json:"moves"`
	Adds        int `json:"adds"`
	Changes     int `json:"changes"`
	Removals    int `json:"removals"`
	Relabels    int `json:"relabels"`
	RecordsOnly int `json:"records_only"`
}

type commitJSON struct {
	Commit  string `json:"commit"`
	Time    string `json:"time"`
	Author  string `json:"author"`
	Subject string `json:"subject"`
	Body    string `json:"body"`
}

type changeJSON struct {
	Class   string      `json:"class"`
	Kind    string      `json:"kind"`
	Record  string      `json:"record"`
	Former  string      `json:"former"`
	Meaning string      `json:"meaning"`
	Why     string      `json:"why"`
	Fields  []fieldJSON `json:"fields"`
}

type fieldJSON struct {
	Name    string `json:"name"`
	Before  string `json:"before"`
	After   string `json:"after"`
	Meaning string `json:"meaning"`
}

type stepJSON struct {
	Number   int      `json:"number"`
	Action   string   `json:"action"`
	Class    string   `json:"class"`
	Space    string   `json:"space"`
	Records  []string `json:"records"`
	Text     string   `json:"text"`
	After    []int    `json:"after"`
	Outage   []string `json:"outage"`
	Cautions []string `json:"cautions"`
	Visit    int      `json:"visit"`
	RoomFor  string   `json:"room_for"`
	Undo     string   `json:"undo"`
}

type outageJSON struct {
	Port    string `json:"port"`
	Service string `json:"service"`
	From    int    `json:"from"`
	// To is 0 where service does not return.
	To int `json:"to"`
	// At are the ports where it goes on, empty where it is back at its own.
	At []string `json:"at"`
}

type materialJSON struct {
	Item     string `json:"item"`
	Quantity string `json:"quantity"`
	Working  string `json:"working"`
}

type testJSON struct {
	Record string `json:"record"`
	Limit  string `json:"limit"`
	Reason string `json:"reason"`
}

type findingsJSON struct {
	Introduced []findingJSON `json:"introduced"`
	Cleared    []findingJSON `json:"cleared"`
}

type findingJSON struct {
	Rule       string      `json:"rule"`
	Severity   string      `json:"severity"`
	Kind       string      `json:"kind"`
	Record     string      `json:"record"`
	Path       string      `json:"path"`
	Line       int         `json:"line"`
	Column     int         `json:"column"`
	Message    string      `json:"message"`
	Working    []termJSON  `json:"working"`
	Result     string      `json:"result"`
	Limit      string      `json:"limit"`
	Source     string      `json:"source"`
	Introduced bool        `json:"introduced"`
	Related    []placeJSON `json:"related"`
}

type termJSON struct {
	Term  string `json:"term"`
	Value string `json:"value"`
}

type placeJSON struct {
	Kind    string `json:"kind"`
	Record  string `json:"record"`
	Path    string `json:"path"`
	Line    int    `json:"line"`
	Column  int    `json:"column"`
	Message string `json:"message"`
}

// OrderJSON writes an order as one document, ended by a new line. The error is
// that of the writer.
func OrderJSON(w io.Writer, o diffreport.Order) error {
	n := o.Counts
	return console.JSON(w, orderDocument{
		Plant: o.Plant, Number: o.Number, Base: o.Base, Head: o.Head, Executable: o.Executable, Clashes: texts(o.Clashes),
		Summary: countsJSON{n.Moves, n.Adds, n.Changes, n.Removals, n.Relabels, n.RecordsOnly},
		Commits: each(o.Commits, func(c diffreport.Commit) commitJSON {
			return commitJSON{c.ID, c.Time.Format(time.RFC3339), c.Author, c.Subject, c.Body}
		}),
		Changes: each(o.Changes, asChange), Steps: each(o.Steps, asStep),
		Outages: each(o.Outages, func(out diffreport.Outage) outageJSON {
			return outageJSON{out.Port, out.Service, out.From, out.To, texts(out.At)}
		}),
		Materials: each(o.Materials, func(m diffreport.Material) materialJSON {
			return materialJSON{m.Item, m.Quantity(unit.Metric), m.Working(unit.Metric)}
		}),
		Labels: texts(o.Labels), Strips: texts(o.Strips), Tests: each(o.Tests, func(t diffreport.Test) testJSON { return testJSON(t) }),
		Cautions: sorted(o.Cautions), Duties: texts(o.Duties), Decided: diffreport.Deciders(), Proven: texts(o.Proven),
		BackOut:  each(o.BackOut, func(b diffreport.Back) backJSON { return backJSON(b) }),
		Findings: findingsJSON{findings(o.Introduced, true), findings(o.Cleared, false)},
	})
}

func asChange(c diffreport.Change) changeJSON {
	return changeJSON{c.Class.String(), c.Kind, c.Label, c.Former, c.Meaning.String(), c.Why, each(c.AllFields(unit.Metric), asField)}
}

func asField(f diffreport.FieldChange) fieldJSON {
	before, after := f.In(unit.Metric)
	return fieldJSON{f.Name, before, after, f.Meaning.String()}
}

func asStep(s diffreport.Step) stepJSON {
	return stepJSON{
		s.Number, string(s.Action), s.Class.String(), s.Space, texts(s.Records), s.Text,
		append([]int{}, s.After...), texts(s.Outage), texts(s.Cautions), s.Visit, s.RoomFor, s.Undo,
	}
}

func findings(list []diffreport.FindingLine, introduced bool) []findingJSON {
	return each(list, func(f diffreport.FindingLine) findingJSON {
		return findingJSON{
			Rule: f.Rule, Severity: f.Severity, Kind: f.Kind, Record: f.Record, Path: f.Path, Line: f.Line, Column: f.Column,
			Message: f.Message, Result: f.Result, Limit: f.Limit, Source: f.Source, Introduced: introduced,
			Working: each(f.Working, func(t diffreport.Term) termJSON { return termJSON(t) }),
			Related: each(f.Related, func(p diffreport.Place) placeJSON { return placeJSON(p) }),
		}
	})
}
