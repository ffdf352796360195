package render_test

import (
	"bytes"
	"fmt"
	"os/exec"
	"regexp"
	"strings"
	"testing"

	"homerun/diffreport"
	"homerun/diffreport/render"
	"homerun/schema"
)

// mostShown is how long a comment may be where changes are discussed (common
// practice).
const mostShown = 65_536

func markdown(t *testing.T, jobs ...render.Job) string {
	t.Helper()
	var first, again bytes.Buffer
	if err := render.OrderMarkdown(&first, jobs); err != nil {
		t.Fatal(err)
	}
	if err := render.OrderMarkdown(&again, jobs); err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(first.Bytes(), again.Bytes()) {
		t.Error("the same orders gave two comments")
	}
	return first.String()
}

// shownBy has the reference reader of the dialect in which comments are written
// turn Markdown into HTML, raw HTML included.
func shownBy(t *testing.T, text string) string {
	t.Helper()
	program, err := exec.LookPath("cmark-gfm")
	if err != nil {
		t.Skip("cmark-gfm is not installed")
	}
	cmd := exec.CommandContext(t.Context(), program, "--unsafe", "-e", "table", "-e", "strikethrough", "-e", "autolink", "-e", "tasklist", "-e", "footnotes")
	cmd.Stdin = strings.NewReader(text)
	out, err := cmd.Output()
	if err != nil {
		t.Fatal(err)
	}
	return string(out)
}

// TestHostileMarkdown puts every hostile text into every place of an order. Read
// by the reference reader, the comment has the elements of a harmless one.
func TestHostileMarkdown(t *testing.T) {
	t.Parallel()
	harmless := shownBy(t, markdown(t, short(harmlessJob())))
	hosts := regexp.MustCompile(`@[A-Za-z0-9]|#[0-9]|(?i)\bgh-[0-9]|:[A-Za-z0-9_+-]+:`)
	for shift := range hostile {
		job := short(hostileJob(shift))
		text := markdown(t, job)
		if len(text) > mostShown {
			t.Fatalf("%d bytes are too long for a comment", len(text))
		}
		got := shownBy(t, text)
		sameShape(t, harmless, got)
		if bad := invisible(got); bad != "" {
			t.Fatalf("the comment holds %q", bad)
		}
		for _, node := range textsOf(t, got) {
			if at := hosts.FindString(node); at != "" {
				t.Errorf("what shows the comment would make something of %q in %q", at, node)
			}
		}
		if want := strings.Join(strings.Fields(schema.Printable(job.Order.Steps[0].Text)), " "); !strings.Contains(words(t, got), want) {
			t.Errorf("the comment does not show %q", want)
		}
	}
}

// short leaves of every list what fits a comment, whatever its texts are, and no
// text that is too long for one.
func short(j render.Job) render.Job {
	o := &j.Order
	o.Steps, o.BackOut, o.Outages, o.Materials = o.Steps[:2], o.BackOut[:2], o.Outages[:2], o.Materials[:2]
	o.Tests, o.Changes, o.Introduced, o.Cautions = o.Tests[:2], o.Changes[:2], o.Introduced[:2], o.Cautions[:2]
	trim := func(text *string) { *text = (*text)[:min(len(*text), 400)] }
	for i := range 2 {
		s := &o.Steps[i]
		for _, text := range []*string{
			&s.Text, &s.Space, &s.Outage[0], &s.RoomFor, &o.Cautions[i], &o.BackOut[i].Text, &o.BackOut[i].Space, &o.Outages[i].Port, &o.Outages[i].Service, &o.Outages[i].At[0],
			&o.Materials[i].Item, &o.Materials[i].Parts[0].Record, &o.Tests[i].Record, &o.Tests[i].Limit, &o.Tests[i].Reason, &o.Changes[i].Label, &o.Changes[i].Former, &o.Changes[i].Why,
			&o.Introduced[i].Message, &o.Introduced[i].Source, &o.Introduced[i].Working[0].Term, &o.Introduced[i].Working[0].Value, &o.Clashes[i], &o.Labels[i],
		} {
			trim(text)
		}
		s.Cautions = []string{o.Cautions[i]}
	}
	for _, text := range []*string{&o.Plant, &o.Base, &o.Head, &o.Number, &o.Strips[0], &o.Duties[0], &o.Proven[0]} {
		trim(text)
	}
	return j
}

// TestCommentsSayWhatTheyLeaveOut makes orders that are too long in every part,
// and several in one comment.
func TestCommentsSayWhatTheyLeaveOut(t *testing.T) {
	t.Parallel()
	job := harmlessJob()
	for i := range 5000 {
		job.Order.Steps = append(job.Order.Steps, diffreport.Step{Number: 1000 + i, Action: diffreport.Patch, Space: "1A", Records: []string{"1A-C01"}, Text: fmt.Sprintf("plug cord %d", i)})
		job.Order.Clashes = append(job.Order.Clashes, fmt.Sprintf("clash %d", i))
	}
	for _, jobs := range [][]render.Job{{job}, {job, job, job}, {hostileJob(0)}, {hostileJob(1), hostileJob(2)}} {
		text := markdown(t, jobs...)
		if len(text) > mostShown {
			t.Errorf("%d orders: %d bytes are too long for a comment", len(jobs), len(text))
		}
		if strings.Count(text, "<details>") != strings.Count(text, "</details>") {
			t.Errorf("%d orders: a fold is left open", len(jobs))
		}
		if !strings.Contains(text, "too much for a comment") {
			t.Errorf("%d orders: nothing is said about what is left out", len(jobs))
		}
	}
	if text := markdown(t, job); !strings.Contains(text, "Steps ("+fmt.Sprint(len(job.Order.Steps))+")") {
		t.Error("the number of the steps is not that of the order")
	}
}
