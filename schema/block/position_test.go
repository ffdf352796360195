package block_test

import (
	"strings"
	"testing"

	"homerun/schema/block"
)

func TestPosition(t *testing.T) {
	t.Parallel()
	tests := []struct {
		name, text   string // the offset is where | stands
		line, column int
	}{
		{"start", "|a\n", 0, 1},
		{"end of line", "ab|\n", 0, 3},
		{"second line", "ab\n|c", 1, 1},
		{"wide characters", "Ü€😀|x", 0, 4},
		{"combining character", "e\u0301|x", 0, 3},
		{"tab", "\t|x", 0, 2},
		{"byte order mark", "\ufeff|x", 0, 1},
		{"mark on another line", "\ufeff\nab|c", 1, 3},
		{"end of CR LF line", "ab|\r\nc", 0, 3},
		{"inside CR LF", "ab\r|\nc", 0, 3},
		{"after CR LF", "ab\r\n|c", 1, 1},
		{"not UTF-8", "\xe9\xe9|x", 0, 3},
		{"stray continuation", "a\x80|\x80", 0, 3},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			t.Parallel()
			before, after, _ := strings.Cut(test.text, "|")
			line, column := block.Position(before+after, len(before))
			if line != test.line || column != test.column {
				t.Errorf("line %d, column %d; want %d, %d", line, column, test.line, test.column)
			}
		})
	}
}

func TestPositionOutside(t *testing.T) {
	t.Parallel()
	for offset, want := range map[int]int{-5: 1, 1: 1, 2: 2, 99: 3} {
		// The offset 1 is inside the first character.
		if line, column := block.Position("Üb", offset); line != 0 || column != want {
			t.Errorf("offset %d: line %d, column %d; want 0, %d", offset, line, column, want)
		}
	}
}
