package standard

import "strings"

// Confidence is how sure a figure is. The zero value is no confidence: a figure
// without one is our mistake.
type Confidence uint8

// The degrees of confidence, the surest first.
const (
	Confirmed   Confidence = iota + 1 // read in the standard as quoted by independent sources, or recomputed from such figures
	FromMemory                        // known to the trade, not found in print here
	Conflicting                       // sources disagree; the note names the other figure
)

// Source says where a figure stands.
type Source struct {
	Body       string // "ANSI/TIA", "ISO/IEC", "NFPA", "EN", "IEEE", "IEC"
	Edition    string // number and edition: "568.2-D", "11801-2:2017", "70-2017"
	Clause     string // clause, table or subject
	Confidence Confidence
	Note       string // what else must be said; may be empty
}

// Document returns body, number and edition: "ANSI/TIA-568.2-D", "EN 50174-2:2009".
func (s Source) Document() string {
	if s.Body == "ANSI/TIA" || s.Edition == "" {
		return strings.TrimSuffix(s.Body+"-"+s.Edition, "-")
	}
	return s.Body + " " + s.Edition
}

// String returns the source as a finding prints it. A figure that is not confirmed
// says so.
func (s Source) String() string {
	var b strings.Builder
	b.WriteString(s.Document())
	if s.Clause != "" {
		b.WriteString(", " + s.Clause)
	}
	switch s.Confidence {
	case FromMemory:
		b.WriteString("; unconfirmed: check the printed standard")
	case Conflicting:
		b.WriteString("; sources disagree: check the printed standard")
	case Confirmed:
	}
	if s.Note != "" {
		b.WriteString(" (" + s.Note + ")")
	}
	return b.String()
}

// Sure reports whether a verdict may rest on the figure.
func (s Source) Sure() bool { return s.Confidence == Confirmed }

// noted returns the source with a note added.
func (s Source) noted(note string) Source {
	if s.Note != "" && note != "" {
		note = s.Note + "; " + note
	}
	if note != "" {
		s.Note = note
	}
	return s
}

// unsure returns the source as one from memory; a conflict stays a conflict.
func (s Source) unsure() Source {
	s.Confidence = max(s.Confidence, FromMemory)
	return s
}

// Weakest returns the least sure confidence of the sources that a result rests on.
func Weakest(sources ...Source) Confidence {
	least := Confirmed
	for _, s := range sources {
		if s.Confidence == 0 {
			panic("standard: a figure without a confidence")
		}
		least = max(least, s.Confidence)
	}
	return least
}
