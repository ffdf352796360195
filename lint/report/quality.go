package report

import (
	"io"

	"homerun/lint"
	"homerun/schema"
	"homerun/schema/console"
)

// The names are those of the code quality report that hosting services read.
type qualityJSON struct {
	Description string       `json:"description"`
	CheckName   string       `json:"check_name"`
	Fingerprint string       `json:"fingerprint"`
	Severity    string       `json:"severity"`
	Location    qualityPlace `json:"location"`
}

type qualityPlace struct {
	Path  string       `json:"path"`
	Lines qualityLines `json:"lines"`
}

type qualityLines struct {
	Begin int `json:"begin"`
	End   int `json:"end"`
}

// Quality writes the findings as the JSON array of a code quality report.
// Services show what one report has and the other has not, by fingerprint;
// waived findings are left out, since the format knows no waiver.
func Quality(w io.Writer, b Batch) error {
	safety := make(map[string]bool)
	for _, r := range b.Rules {
		safety[r.Name] = r.Safety
	}
	list := make([]qualityJSON, 0)
	for _, e := range b.all() {
		if e.Waiver != "" {
			continue
		}
		line := max(1, e.At.Line)
		list = append(list, qualityJSON{
			Description: schema.Printable(e.Message), CheckName: e.Rule, Fingerprint: e.id,
			Severity: qualitySeverity(e.Severity, safety[e.Rule]),
			Location: qualityPlace{Path: e.At.Path, Lines: qualityLines{Begin: line, End: max(line, e.At.EndLine)}},
		})
	}
	return console.JSON(w, list)
}

// qualitySeverity is the service's word: departing from a safety rule can hurt
// somebody.
func qualitySeverity(s lint.Severity, safety bool) string {
	switch {
	case s == lint.Nonconformity && safety:
		return "critical"
	case s == lint.Nonconformity:
		return "major"
	}
	return "minor"
}
