package report

import (
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"slices"
	"strings"

	"homerun/lint"
	"homerun/schema/plant"
)

// A Batch is what one run of lint found in all the plants that it looked at.
type Batch struct {
	Reports []*lint.Report
	// Rules are the rules that were run, in the order in which they are
	// explained.
	Rules []*lint.Rule
	// Explain returns what a rule is about, in paragraphs of plain text; empty
	// where nothing is known. It is only asked about Rules.
	Explain func(rule string) string
	// Revision is "worktree", "index" or a commit.
	Revision string
	// Compared is set where Introduced was worked out against another
	// revision; without it no report states it.
	Compared bool
	// IntroducedOnly is set where only new or worse nonconformities count.
	IntroducedOnly bool
}

// An entry is one finding of a batch with the name that it keeps.
type entry struct {
	*lint.Finding
	plant *plant.Plant
	// id is the fingerprint for programs.
	id string
}

// entries lists the findings of a report, waived ones among the others, in
// report order.
func (b *Batch) entries(r *lint.Report, seen identities) []entry {
	all := slices.Concat(r.Findings, r.Waived)
	lint.Sort(all)
	return named(r.Plant, all, seen)
}

// gone lists the findings of a former state that are no more. They come after
// the entries of their report, so that no name of those depends on them.
func (b *Batch) gone(r *lint.Report, seen identities) []entry {
	if !b.Compared {
		return nil
	}
	return named(r.Plant, r.Gone, seen)
}

func named(p *plant.Plant, findings []lint.Finding, seen identities) []entry {
	out := make([]entry, len(findings))
	for i := range findings {
		out[i] = entry{Finding: &findings[i], plant: p, id: seen.name(p.Name(), &findings[i])}
	}
	return out
}

// all lists the findings of every plant.
func (b *Batch) all() []entry {
	var out []entry
	seen := make(identities)
	for _, r := range b.Reports {
		out = append(out, b.entries(r, seen)...)
	}
	return out
}

// counts says whether a finding counts against the records now.
func (b *Batch) counts(f *lint.Finding) bool {
	return f.Waiver == "" && (!b.IntroducedOnly || blocks(f))
}

// identities counts the findings that have the same fingerprint.
type identities map[string]int

// name is the fingerprint of a finding in JSON, SARIF and the quality report:
// the first 32 hexadecimal digits of the SHA-256 of the plant's label and the
// finding's own fingerprint, which are rule, kind, label and key, each ended by
// a NUL. Neither line nor figure nor wording is in it, so it stays the same while
// the record moves, grows or is measured again. The second finding with the
// same fingerprint gets "#2" and so on in report order, because services take
// fingerprints for unique.
func (seen identities) name(plantLabel string, f *lint.Finding) string {
	text := plantLabel + "\x00" + f.Fingerprint(func(label string) string { return label }) + "\x00"
	seen[text]++
	if n := seen[text]; n > 1 {
		text += fmt.Sprintf("#%d\x00", n)
	}
	sum := sha256.Sum256([]byte(text))
	return hex.EncodeToString(sum[:16])
}

// sum is the working as lines of text, with limit, source and next step.
func sum(f *lint.Finding) string {
	var b strings.Builder
	for _, t := range terms(f) {
		b.WriteString(t[0] + ": " + t[1] + "\n")
	}
	return strings.TrimSuffix(b.String(), "\n")
}
