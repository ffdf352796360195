package unit_test

import (
	"errors"
	"strconv"
	"strings"
	"testing"
	"unicode"

	"homerun/schema/unit"
)

// FuzzParse gives any text to every parser: none panics, a refusal is an *Error whose
// message is one short line and whose offers are read, and what is read and printed
// exactly reads back the same.
func FuzzParse(f *testing.F) {
	for _, seed := range []string{
		"41.5 m", "136 ft", "12 ft 6 in", "12'6\"", "24 C", "-40F", "297.15 K", "25.5 W", "0.5 A", "250 MHz", "2.6 dB", "12 dBmV",
		"90 min", "90 deg", "2027-03-31", "23 AWG solid", "41,5 m", "1e9 m", "inf", "\u2212300 C", " 5 m", "9223372036854775807 nm",
		"99999999999999999999 m", "0.000000000000000001 km", "5 ft\x00", "\xff m", "1. m", "5 \u00b0C", "5 \u00b0", "1_0 m", "5\n m", "+-5 ft 6 in",
	} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, s string) {
		for _, q := range quantities() {
			v, err := q.parse(s)
			if err != nil {
				checkRefusal(t, s, err, q.parse)
				continue
			}
			for _, sys := range []unit.System{unit.Metric, unit.US} {
				text := q.text(v, sys)
				if got, back := q.parse(text); exactIn(q, text, v) && (back != nil || got != v) {
					t.Errorf("%s %q = %d printed as %q, read as %d, %v", q.name, s, v, text, got, back)
				}
			}
		}
		fuzzDate(t, s)
		fuzzConductor(t, s)
	})
}

func fuzzDate(t *testing.T, s string) {
	t.Helper()
	d, err := unit.ParseDate(s)
	if err != nil {
		checkRefusal(t, s, err, func(s string) (int64, error) { _, e := unit.ParseDate(s); return 0, e })
	} else if d.String() != s {
		t.Errorf("date %q printed as %q", s, d)
	}
}

func fuzzConductor(t *testing.T, s string) {
	t.Helper()
	c, err := unit.ParseConductor(s)
	if err != nil {
		checkRefusal(t, s, err, func(s string) (int64, error) { _, e := unit.ParseConductor(s); return 0, e })
	} else if c.String() != s {
		t.Errorf("conductor %q printed as %q", s, c)
	}
}

// checkRefusal fails where a refusal is not fit to be shown.
func checkRefusal(t *testing.T, s string, err error, parse func(string) (int64, error)) {
	t.Helper()
	var refused *unit.Error
	if !errors.As(err, &refused) {
		t.Fatalf("%q: %T is no *unit.Error", s, err)
	}
	whole := refused.Error()
	if refused.Text != s || refused.Message == "" || len(whole) > 400 || strings.ContainsFunc(whole, unicode.IsControl) {
		t.Errorf("%q: text %q, refusal %q", s, refused.Text, whole)
	}
	for _, offer := range offers(t, refused.Next) {
		if _, err := parse(offer); err != nil {
			t.Errorf("%q: offers %q, which is refused: %v", s, offer, err)
		}
	}
}

// offers takes the quoted texts out of a hint.
func offers(t *testing.T, next string) []string {
	t.Helper()
	var out []string
	for next != "" {
		at := strings.IndexByte(next, '"')
		if at < 0 {
			break
		}
		quoted, err := strconv.QuotedPrefix(next[at:])
		if err != nil {
			t.Fatalf("hint %q: %v", next, err)
		}
		text, _ := strconv.Unquote(quoted)
		out = append(out, text)
		next = next[at+len(quoted):]
	}
	return out
}
