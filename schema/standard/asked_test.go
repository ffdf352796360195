package standard_test

import (
	"strconv"
	"strings"
	"testing"

	"homerun/schema/standard"
	"homerun/schema/unit"
)

// asked is the case of a row: what is given, read by the parsers that records use.
type asked struct {
	t     *testing.T
	given map[string]string
}

func read[T any](a asked, key string, parse func(string) (T, error)) T {
	a.t.Helper()
	var zero T
	text, stated := a.given[key]
	if !stated {
		return zero
	}
	v, err := parse(text)
	if err != nil {
		a.t.Fatalf("%s=%s: %v", key, text, err)
	}
	return v
}

func (a asked) regime() standard.Regime {
	return read(a, "standard", standard.ParseRegime)
}

func (a asked) category() standard.Category {
	return read(a, "category", standard.ParseCategory)
}

func (a asked) length(key string) unit.Length { return read(a, key, unit.ParseLength) }

func (a asked) frequency() unit.Frequency { return read(a, "f", unit.ParseFrequency) }

func (a asked) at() unit.Temperature { return read(a, "at", unit.ParseTemperature) }

func (a asked) number(key string) int { return read(a, key, strconv.Atoi) }

func (a asked) shield() standard.Shield {
	c := read(a, "screen", standard.ParseConstruction)
	return c.Shield()
}

func (a asked) listing() standard.Listing { return read(a, "listing", standard.ParseListing) }

func (a asked) euroclass(key string) standard.Euroclass {
	return read(a, key, func(s string) (standard.Euroclass, error) {
		return standard.ParseEuroclass(strings.ReplaceAll(s, ";", ","))
	})
}

// metres, millimetres, figure and words shape answers.
func metres(l unit.Length, src standard.Source, ok bool) answer {
	return answer{number: l.Metres(), source: &src, ok: ok}
}

func millimetres(l unit.Length, src standard.Source, ok bool) answer {
	return answer{number: l.Millimetres(), source: &src, ok: ok}
}

func figure(v float64, src standard.Source, ok bool) answer {
	return answer{number: v, source: &src, ok: ok}
}

func words(s string, src standard.Source, ok bool) answer {
	return answer{words: s, source: &src, ok: ok}
}
