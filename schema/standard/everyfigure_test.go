package standard_test

import (
	"maps"
	"strings"
	"testing"

	"homerun/schema/standard"
)

// figures names the figure that each row of the vectors asks for.
func figures() map[string]func(asked) answer {
	all := map[string]func(asked) answer{}
	for _, some := range []map[string]func(asked) answer{pairFigures(), lightFigures(), powerFigures(), pathwayFigures(), codeFigures()} {
		maps.Copy(all, some)
	}
	return all
}

// TestConfirmedVectorsOfMedia asserts the published values of fibre, coaxial cable, power,
// bundles and pathways, as TestConfirmedVectors does.
func TestConfirmedVectorsOfMedia(t *testing.T) {
	t.Parallel()
	for _, r := range vectors(t, "standard-2-confirmed.csv", 640) {
		got := check(t, r)
		if got.source != nil && got.source.Sure() == r.formulaFromMemory {
			t.Errorf("line %d: %s %s: source is %q", r.line, r.figure, r.text, got.source)
		}
	}
}

// TestVectorsOfMediaFromMemory asserts the values that were not found in print, or on which
// sources disagree, and that each says so.
func TestVectorsOfMediaFromMemory(t *testing.T) {
	t.Parallel()
	for _, r := range vectors(t, "standard-2-from-memory.csv", 150) {
		got := check(t, r)
		if got.source == nil || got.source.Sure() {
			t.Errorf("line %d: %s %s: source %v claims to be confirmed", r.line, r.figure, r.text, got.source)
		}
		if !strings.HasSuffix(r.source, ", from memory") {
			t.Errorf("line %d: source column %q does not say that it is from memory", r.line, r.source)
		}
	}
}

func (a asked) code() standard.FireCode { return read(a, "code", standard.ParseFireCode) }

func (a asked) fibre(key string) standard.Fibre { return read(a, key, standard.ParseFibre) }

func yes(b bool) string { return map[bool]string{true: "yes", false: "no"}[b] }
