package console_test

import (
	"errors"
	"regexp"
	"strings"
	"testing"

	"github.com/mattn/go-runewidth"
	"pgregory.net/rapid"

	"homerun/schema/console"
)

// write lays some text out and returns what a writer gets.
func write(o console.Options, text, term, value string) string {
	var b strings.Builder
	p := console.New(&b, o)
	p.Line(0, 4, console.In(console.Quiet, "runs.hcl:1:1:"), console.Plain(" "), console.In(console.Strong, text))
	p.Terms(4, [2]string{term, value}, [2]string{"next", text})
	return b.String()
}

var style = regexp.MustCompile("\x1b\\[[0-9;]*m")

// TestPages holds any text to the page: every line fits its width unless one
// word alone does not, nothing unprintable gets through, and colour changes
// nothing but the colour.
func TestPages(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.StringN(0, 200, -1).Draw(t, "text")
		term := rapid.StringMatching(`[a-z ]{1,30}`).Draw(t, "term")
		value := rapid.StringMatching(`[a-z0-9 .,]{0,200}`).Draw(t, "value")
		plain := write(console.Options{}, text, term, value)
		if strings.ContainsAny(plain, "\x1b\x00\r\t\u202e\u200b") {
			t.Fatalf("control characters on the page: %q", plain)
		}
		for line := range strings.Lines(plain) {
			line = strings.TrimSuffix(line, "\n")
			if runewidth.StringWidth(line) > console.DefaultWidth && len(strings.Fields(line)) > 4 && widest(line) < 30 {
				t.Fatalf("a line of %d columns: %q", runewidth.StringWidth(line), line)
			}
		}
		coloured := write(console.Options{Colour: true}, text, term, value)
		if bare := style.ReplaceAllString(coloured, ""); bare != plain {
			t.Fatalf("without its colour the page differs:\n%q\n%q", bare, plain)
		}
	})
}

func widest(line string) int {
	most := 0
	for w := range strings.FieldsSeq(line) {
		most = max(most, runewidth.StringWidth(w))
	}
	return most
}

// TestWrapping shows the layout itself.
func TestWrapping(t *testing.T) {
	t.Parallel()
	got := write(console.Options{Width: 40}, "1A-A07: channel 103.4 m, limit 100 m", "horizontal cable", "91.4 m as recorded, with a coil of two metres")
	want := `runs.hcl:1:1: 1A-A07: channel 103.4 m,
    limit 100 m
    horizontal cable  91.4 m as
                      recorded, with a
                      coil of two metres
    next              1A-A07: channel
                      103.4 m, limit 100
                      m
`
	if got != want {
		t.Errorf("got:\n%s\nwant:\n%s", got, want)
	}
}

type full struct{}

func (full) Write([]byte) (int, error) { return 0, errors.New("no space left") }

// TestTheFirstErrorIsKept writes to a full disk.
func TestTheFirstErrorIsKept(t *testing.T) {
	t.Parallel()
	p := console.New(full{}, console.Options{})
	p.Blank()
	p.Line(0, 0, console.Plain("more"))
	if err := p.Err(); err == nil || !strings.Contains(err.Error(), "no space left") {
		t.Errorf("error %v", err)
	}
}
