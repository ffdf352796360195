package report

import (
	"bytes"
	"cmp"
	"fmt"
	"io"
	"slices"
	"strconv"
	"strings"

	"homerun/lint"
	"homerun/schema"
)

// mostAnnotations is how many annotations of one step a hosting service shows;
// it drops the others without a word.
const mostAnnotations = 10

// Annotations writes the worst findings as commands of a hosting service's
// build log, which shows them beside the changed lines: ten of them, because
// more are not shown. Then it writes all findings as text, which no service cuts.
func Annotations(w io.Writer, b Batch, o TextOptions) error {
	list := b.worst()
	var out bytes.Buffer
	for _, e := range list[:min(len(list), mostAnnotations)] {
		out.WriteString(annotation(e) + "\n")
	}
	if len(list) > mostAnnotations {
		fmt.Fprintf(&out, "%d of %d findings are annotated, the worst first; all of them are listed here\n", mostAnnotations, len(list))
	}
	o.Most = 0
	log := &logText{w: &out}
	for _, r := range b.Reports {
		if err := Text(log, r, o); err != nil {
			return err
		}
	}
	if _, err := w.Write(out.Bytes()); err != nil {
		return fmt.Errorf("writing the report: %w", err)
	}
	return nil
}

// worst lists the findings that count: nonconformities first, among them those
// of safety rules, then what is new; otherwise in report order.
func (b *Batch) worst() []entry {
	safety := make(map[string]bool)
	for _, r := range b.Rules {
		safety[r.Name] = r.Safety
	}
	list := slices.DeleteFunc(b.all(), func(e entry) bool { return !b.counts(e.Finding) })
	rank := func(e entry) int {
		n := 4 * int(e.Severity)
		if safety[e.Rule] {
			n += 2
		}
		if e.Introduced {
			n++
		}
		return -n
	}
	slices.SortStableFunc(list, func(x, y entry) int { return cmp.Compare(rank(x), rank(y)) })
	return list
}

func annotation(e entry) string {
	command := "warning"
	if e.Severity == lint.Nonconformity {
		command = "error"
	}
	at := e.At
	text := "::" + command + " file=" + property(at.Path) + ",line=" + strconv.Itoa(max(1, at.Line))
	switch {
	case at.EndLine > at.Line:
		text += ",endLine=" + strconv.Itoa(at.EndLine)
	case at.EndColumn > at.Column:
		text += ",col=" + strconv.Itoa(max(1, at.Column)) + ",endColumn=" + strconv.Itoa(at.EndColumn)
	}
	about := e.Message
	if more := sum(e.Finding); more != "" {
		about += "\n" + more
	}
	return text + ",title=" + property(e.Rule) + "::" + data(about)
}

// data escapes what ends a command's text or begins an escape; control
// characters but the line's end are made visible first.
func data(text string) string {
	return strings.NewReplacer("%", "%25", "\r", "%0D", "\n", "%0A").Replace(lines(text))
}

// property escapes what ends a command's property, too.
func property(text string) string {
	return strings.NewReplacer(":", "%3A", ",", "%2C").Replace(data(schema.Printable(text)))
}

// lines makes each line of a text printable.
func lines(text string) string {
	all := strings.Split(text, "\n")
	for i, line := range all {
		all[i] = schema.Printable(line)
	}
	return strings.Join(all, "\n")
}

// logText writes text into a build log so that no line of it is a command
// there. A service takes a line for one that begins with two colons after any
// space, and one that holds two number signs before a bracket anywhere.
type logText struct {
	w *bytes.Buffer
}

// Write takes whole lines, as a page writes them.
func (l *logText) Write(p []byte) (int, error) {
	for line := range strings.Lines(string(p)) {
		if rest := strings.TrimLeft(line, " "); strings.HasPrefix(rest, "::") {
			line = line[:len(line)-len(rest)] + `\x3a` + rest[1:]
		}
		l.w.WriteString(strings.ReplaceAll(line, "##", `#\x23`))
	}
	return len(p), nil
}
