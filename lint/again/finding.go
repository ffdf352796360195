package again

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"homerun/lint"
	"homerun/schema"
)

// A spot is a rule and the record that it found something about.
type spot struct{ rule, record string }

func spotOf(f *lint.Finding) spot { return spot{f.Rule, f.Record} }

func compareText(a, b string) int { return strings.Compare(a, b) }

// identity is what makes a finding the same one before and after: all that it says
// but for places, working and advice.
func identity(f *lint.Finding) string {
	var b strings.Builder
	for _, part := range [...]string{f.Rule, f.Kind, f.Record, f.Message, f.Waiver} {
		b.WriteString(part)
		b.WriteByte(0)
	}
	b.WriteByte(byte('0' + f.Severity))
	for _, k := range f.Key {
		b.WriteByte(0)
		b.WriteString(k)
	}
	return b.String()
}

// saying is a finding with its sum: of findings that several records add up to, it
// tells what each part of the records adds.
func saying(f *lint.Finding) string {
	var b strings.Builder
	b.WriteString(identity(f))
	fmt.Fprintf(&b, "\x01%s\x00%s\x00%s\x00%g", f.Result, f.Limit, f.Source, f.Excess)
	for _, t := range f.Working {
		b.WriteString("\x00" + t.Term + "\x00" + t.Value)
	}
	return b.String()
}

// differ takes out of two lists what both say the same. Most often that is all of them
// in their order, so what they begin with is compared before anything is put into words.
func differ(was, is []lint.Finding) (gone, come []lint.Finding) {
	n := 0
	for n < min(len(was), len(is)) && sameSaying(&was[n], &is[n]) {
		n++
	}
	return subtract(was[n:], is[n:], saying)
}

// sameSaying says whether two findings have one saying.
func sameSaying(f, g *lint.Finding) bool {
	return f.Rule == g.Rule && f.Kind == g.Kind && f.Record == g.Record && f.Message == g.Message && f.Waiver == g.Waiver &&
		f.Severity == g.Severity && f.Result == g.Result && f.Limit == g.Limit && f.Source == g.Source && f.Excess == g.Excess &&
		slices.Equal(f.Key, g.Key) && slices.Equal(f.Working, g.Working)
}

// subtract takes out of two lists what both have, and leaves the rest in its order.
func subtract(was, is []lint.Finding, by func(*lint.Finding) string) (gone, come []lint.Finding) {
	if len(was) == 0 || len(is) == 0 {
		return was, is
	}
	count := make(map[string]int, len(was))
	for i := range was {
		count[by(&was[i])]++
	}
	for i := range is {
		if key := by(&is[i]); count[key] > 0 {
			count[key]--
			continue
		}
		come = append(come, is[i])
	}
	for i := range was {
		if key := by(&was[i]); count[key] > 0 {
			count[key]--
			gone = append(gone, was[i])
		}
	}
	return gone, come
}

// carried is a finding as the standing remembers it: without its sum and places, of a
// bundle with the runs that it names.
func carried(f *lint.Finding) lint.Finding {
	c := lint.Finding{Rule: f.Rule, Severity: f.Severity, Kind: f.Kind, Record: f.Record, Message: f.Message, Key: f.Key, Excess: f.Excess}
	if f.Kind == schema.KindBundle {
		for _, n := range f.Related {
			c.Related = append(c.Related, schema.Note{Kind: n.Kind, Label: n.Label})
		}
	}
	return c
}

// order sorts findings by what they are about.
func order(findings []lint.Finding) {
	slices.SortStableFunc(findings, func(a, b lint.Finding) int {
		return cmp.Or(
			cmp.Compare(a.Rule, b.Rule), cmp.Compare(a.Kind, b.Kind), cmp.Compare(a.Record, b.Record), slices.Compare(a.Key, b.Key),
			cmp.Compare(a.Waiver, b.Waiver), cmp.Compare(a.Message, b.Message), cmp.Compare(a.Severity, b.Severity),
		)
	})
}
