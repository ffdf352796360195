package report

import (
	"io"

	"homerun/lint"
	"homerun/schema"
	"homerun/schema/console"
)

// The names below are what other programs rely on: fields are added, never
// renamed or taken away.
type document struct {
	Plant    string        `json:"plant"`
	Revision string        `json:"revision"`
	Summary  summaryJSON   `json:"summary"`
	Findings []findingJSON `json:"findings"`
}

type summaryJSON struct {
	Nonconformity int `json:"nonconformity"`
	Observation   int `json:"observation"`
	Waived        int `json:"waived"`
}

type findingJSON struct {
	Rule       string      `json:"rule"`
	Severity   string      `json:"severity"`
	Kind       string      `json:"kind"`
	Record     string      `json:"record"`
	Path       string      `json:"path"`
	Line       int         `json:"line"`
	Column     int         `json:"column"`
	EndLine    int         `json:"end_line"`
	EndColumn  int         `json:"end_column"`
	Message    string      `json:"message"`
	Next       string      `json:"next,omitempty"`
	Working    []termJSON  `json:"working"`
	Result     string      `json:"result"`
	Limit      string      `json:"limit"`
	Source     string      `json:"source"`
	Introduced *bool       `json:"introduced,omitempty"`
	Waiver     string      `json:"waiver,omitempty"`
	Related    []notesJSON `json:"related"`
	// Fingerprint is the finding's own, over commits.
	Fingerprint string `json:"fingerprint"`
}

type termJSON struct {
	Term  string `json:"term"`
	Value string `json:"value"`
}

type notesJSON struct {
	Kind    string `json:"kind"`
	Record  string `json:"record"`
	Path    string `json:"path"`
	Line    int    `json:"line"`
	Column  int    `json:"column"`
	Message string `json:"message"`
}

// JSON writes one document for each plant, ended by a new line. Waived findings
// are listed too, with the waiver's label. The fingerprint of a finding stays
// the same over commits, whatever its line and its figures.
func JSON(w io.Writer, b Batch) error {
	seen := make(identities)
	for _, r := range b.Reports {
		doc := document{
			Plant: r.Plant.Name(), Revision: b.Revision,
			Summary:  summaryJSON{r.Count(lint.Nonconformity), r.Count(lint.Observation), len(r.Waived)},
			Findings: make([]findingJSON, 0, len(r.Findings)+len(r.Waived)),
		}
		for _, e := range b.entries(r, seen) {
			doc.Findings = append(doc.Findings, b.asJSON(e))
		}
		if err := console.JSON(w, doc); err != nil {
			return err
		}
	}
	return nil
}

func (b *Batch) asJSON(f entry) findingJSON {
	out := findingJSON{
		Fingerprint: f.id,
		Rule:        f.Rule, Severity: f.Severity.String(), Kind: f.Kind, Record: f.Record,
		Path: f.At.Path, Line: f.At.Line, Column: f.At.Column, EndLine: f.At.EndLine, EndColumn: f.At.EndColumn,
		Message: f.Message, Next: f.Next, Result: f.Result, Limit: f.Limit, Source: f.Source, Waiver: f.Waiver,
		Working: make([]termJSON, 0, len(f.Working)), Related: make([]notesJSON, 0, len(f.Related)),
	}
	for _, t := range f.Working {
		out.Working = append(out.Working, termJSON(t))
	}
	for _, n := range f.Related {
		out.Related = append(out.Related, noteAsJSON(n))
	}
	if b.Compared {
		introduced := f.Introduced
		out.Introduced = &introduced
	}
	return out
}

func noteAsJSON(n schema.Note) notesJSON {
	return notesJSON{Kind: n.Kind, Record: n.Label, Path: n.At.Path, Line: n.At.Line, Column: n.At.Column, Message: n.Message}
}
