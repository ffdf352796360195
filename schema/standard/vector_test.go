package standard_test

import (
	"encoding/csv"
	"math"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"homerun/schema/standard"
)

// row is one published value: what is asked of which figure, and what it should be.
type row struct {
	line                       int
	figure, text, want, source string
	given                      map[string]string
	tolerance                  float64
	formulaFromMemory          bool
}

// answer is what the package says: a number or words, and where it stands. A figure that
// has no source of its own leaves it out.
type answer struct {
	number float64
	words  string
	source *standard.Source
	ok     bool
}

// TestConfirmedVectors asserts every published value that the tables cover. A figure that
// is confirmed in print must say so itself, but where the row says that it comes out of a
// formula from memory.
func TestConfirmedVectors(t *testing.T) {
	t.Parallel()
	for _, r := range vectors(t, "standard-confirmed.csv", 700) {
		got := check(t, r)
		if got.source != nil && got.source.Sure() == r.formulaFromMemory {
			t.Errorf("line %d: %s %s: source is %q", r.line, r.figure, r.text, got.source)
		}
	}
}

// TestVectorsFromMemory asserts the values that were not found in print, and that each
// says so.
func TestVectorsFromMemory(t *testing.T) {
	t.Parallel()
	for _, r := range vectors(t, "standard-from-memory.csv", 190) {
		got := check(t, r)
		if got.source == nil || got.source.Sure() {
			t.Errorf("line %d: %s %s: source %v claims to be confirmed", r.line, r.figure, r.text, got.source)
		}
		if !strings.HasSuffix(r.source, ", from memory") {
			t.Errorf("line %d: source column %q does not say that it is from memory", r.line, r.source)
		}
	}
}

// check compares one row with what the package says.
func check(t *testing.T, r row) answer {
	t.Helper()
	ask, known := figures()[r.figure]
	if !known {
		t.Fatalf("line %d: nothing is asked for figure %q", r.line, r.figure)
	}
	got := ask(asked{t: t, given: r.given})
	if !got.ok {
		t.Errorf("line %d: %s %s: no answer, want %s", r.line, r.figure, r.text, r.want)
		return got
	}
	want, err := strconv.ParseFloat(r.want, 64)
	if r.tolerance < 0 || err != nil {
		if got.words != r.want {
			t.Errorf("line %d: %s %s = %q, %s says %q", r.line, r.figure, r.text, got.words, r.source, r.want)
		}
		return got
	}
	if math.Abs(got.number-want) > r.tolerance+1e-9 {
		t.Errorf("line %d: %s %s = %v, %s says %v", r.line, r.figure, r.text, got.number, r.source, want)
	}
	return got
}

// vectors reads a file of published values; it fails where the file has shrunk.
func vectors(t *testing.T, name string, least int) []row {
	t.Helper()
	f, err := os.Open(filepath.Join("..", "..", "testdata", "vectors", name))
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	records, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	var rows []row
	for i, rec := range records[1:] {
		r := row{line: i + 2, figure: rec[0], text: rec[1], want: rec[2], source: rec[4], tolerance: -1, given: map[string]string{}}
		for pair := range strings.FieldsSeq(rec[1]) {
			k, v, _ := strings.Cut(pair, "=")
			r.given[k] = v
		}
		if rec[3] != "" {
			if r.tolerance, err = strconv.ParseFloat(rec[3], 64); err != nil {
				t.Fatalf("line %d: tolerance %q", r.line, rec[3])
			}
		}
		r.formulaFromMemory = len(rec) > 5 && rec[5] == "from memory"
		if r.source == "" {
			t.Fatalf("line %d: no source", r.line)
		}
		rows = append(rows, r)
	}
	if len(rows) < least {
		t.Fatalf("%s has %d rows, expected at least %d", name, len(rows), least)
	}
	return rows
}
