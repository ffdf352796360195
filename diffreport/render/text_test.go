package render_test

import (
	"bytes"
	"encoding/json"
	"regexp"
	"strings"
	"testing"

	"homerun/diffreport/render"
	"homerun/schema"
	"homerun/schema/console"
)

func orderText(t *testing.T, j render.Job, o console.Options) string {
	t.Helper()
	var b bytes.Buffer
	if err := render.OrderText(&b, j, o); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

// TestHostileText puts every hostile text into every place: a terminal sees no
// command but the page's own styles, and the text as it is written.
func TestHostileText(t *testing.T) {
	t.Parallel()
	// Select graphic rendition, of ECMA-48 8.3.117, is all that a page sends.
	styles := regexp.MustCompile("\x1b\\[[0-9;]*m")
	for shift := 0; shift < len(hostile); shift += 9 {
		job := hostileJob(shift)
		coloured := orderText(t, job, console.Options{Colour: true})
		plain := styles.ReplaceAllString(coloured, "")
		if bad := invisible(plain); bad != "" {
			t.Fatalf("the text holds %q", bad)
		}
		if plain != orderText(t, job, console.Options{}) {
			t.Error("without colour the text says something else")
		}
		if shift > 0 {
			continue
		}
		shown := strings.Join(strings.Fields(plain), " ")
		for _, text := range hostile {
			if want := strings.Join(strings.Fields(schema.Printable(text)), " "); !strings.Contains(shown, want) {
				t.Errorf("the text does not show %.200q", want)
			}
		}
	}
}

// TestTextFitsAnyWidth holds the lines of real orders to the width of the page.
func TestTextFitsAnyWidth(t *testing.T) {
	t.Parallel()
	for name, job := range caseJobs(t) {
		for _, width := range []int{60, 80, 120} {
			for line := range strings.Lines(orderText(t, job, console.Options{Width: width})) {
				line = strings.TrimSuffix(line, "\n")
				if len([]rune(line)) > width && strings.Contains(strings.TrimSpace(line), " ") && !strings.Contains(line, "____") {
					t.Errorf("%s: wider than %d columns: %q", name, width, line)
				}
			}
		}
	}
}

// TestHostileDocument reads what programs are handed: the texts as the records
// state them, and none of them as bytes that a terminal or browser acts on.
func TestHostileDocument(t *testing.T) {
	t.Parallel()
	job := hostileJob(0)
	var b bytes.Buffer
	if err := render.OrderJSON(&b, job.Order); err != nil {
		t.Fatal(err)
	}
	if bad := invisible(b.String()); bad != "" {
		t.Errorf("the document holds %q", bad)
	}
	if strings.ContainsAny(b.String(), "<>&") {
		t.Error("the document holds what a browser takes for markup")
	}
	var got struct {
		Steps []struct{ Text, Space string }
	}
	if err := json.Unmarshal(b.Bytes(), &got); err != nil {
		t.Fatal(err)
	}
	for i, s := range job.Order.Steps {
		// bytes that are no text have no place in JSON (RFC 8259, section 8.1)
		want := strings.ToValidUTF8(s.Text, "\ufffd\ufffd")
		if got.Steps[i].Text != want {
			t.Errorf("step %d is %q, not %q", i+1, got.Steps[i].Text, want)
		}
	}
}
