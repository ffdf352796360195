package weave

import (
	"strings"
)

// Texts are the three texts of a merge: what both sides started from, empty
// where the file is new on both, and what each made of it.
type Texts struct{ Base, Ours, Theirs string }

// A Style says what stands between the markers of a conflict.
type Style uint8

// The styles, as git's merge.conflictStyle has them.
const (
	TwoSides Style = iota // ours and theirs
	WithBase              // and between them what both started from
)

// Options say how conflicts are written.
type Options struct {
	// MarkerSize is how many characters a marker has; 0 is 7.
	MarkerSize int
	Style      Style
	// Ours, Base and Theirs name the texts behind the markers; "ours", "base"
	// and "theirs" where they are empty.
	Ours, Base, Theirs string
}

// A Result is the joined text. Without conflicts it can be read; with conflicts
// each stands between markers.
type Result struct {
	Text      string
	Conflicts []Conflict
}

const (
	smallestMarker = 7
	largestMarker  = 1 << 10
)

func (o Options) size() int {
	if o.MarkerSize <= 0 {
		return smallestMarker
	}
	return min(o.MarkerSize, largestMarker)
}

func (o Options) name(given, otherwise string) string {
	if given == "" {
		return otherwise
	}
	return given
}

// Merge joins two people's changes to one file. The error is an *UnfitError where a
// text can not be cut into records, or where the joined text would not state
// what was joined: then nothing is lost by merging lines.
func Merge(t Texts, o Options) (Result, error) {
	switch {
	case t.Ours == t.Theirs, t.Theirs == t.Base:
		return Result{Text: t.Ours}, nil
	case t.Ours == t.Base:
		return Result{Text: t.Theirs}, nil
	}
	forms := [3]form{formOf(t.Base), formOf(t.Ours), formOf(t.Theirs)}
	names := [3]string{o.name(o.Base, "base"), o.name(o.Ours, "ours"), o.name(o.Theirs, "theirs")}
	read, err := readAll(names, [3]string{withoutConflicts(forms[0].text), forms[1].text, forms[2].text})
	if err != nil {
		return Result{}, err
	}
	if texts, moved := carry(read); moved {
		if read, err = readAll(names, texts); err != nil {
			return Result{}, err
		}
	}
	var j joiner
	j.line(j.body(read[0], read[1], read[2]))
	if !proved(j.pieces, j.states) {
		return Result{}, &UnfitError{Text: o.name(o.Ours, "ours"), Message: "the records joined would not read as what was joined"}
	}
	result := Result{Text: forms[0].like(forms[1], forms[2]).dress(written(j.pieces, o))}
	for i := range j.pieces {
		if c := j.pieces[i].conflict; c != nil {
			result.Conflicts = append(result.Conflicts, *c)
		}
	}
	return result, nil
}

// readAll cuts the three texts into items.
func readAll(names, texts [3]string) (read [3]body, err error) {
	for i := range texts {
		if read[i], err = readFile(names[i], texts[i]); err != nil {
			return read, err
		}
	}
	return read, nil
}

const byteOrderMark = "\ufeff"

// A form is how the bytes of a text are dressed: none of it is part of a line.
type form struct {
	text         string
	mark, ending string
}

// formOf undresses a text: LF at every end of a line, the last too.
func formOf(text string) form {
	f := form{ending: "\n"}
	f.text, f.mark = strings.TrimPrefix(text, byteOrderMark), ""
	if f.text != text {
		f.mark = byteOrderMark
	}
	if n := strings.Count(f.text, "\r\n"); n > 0 {
		if 2*n > strings.Count(f.text, "\n") {
			f.ending = "\r\n"
		}
		f.text = strings.ReplaceAll(f.text, "\r\n", "\n")
	}
	if f.text != "" && !strings.HasSuffix(f.text, "\n") {
		f.text += "\n"
	}
	return f
}

// like is the dress that the sides agree about.
func (f form) like(ours, theirs form) form {
	if f.text == "" {
		return ours
	}
	return form{mark: three(f.mark, ours.mark, theirs.mark), ending: three(f.ending, ours.ending, theirs.ending)}
}

func (f form) dress(text string) string {
	if f.ending != "\n" {
		text = strings.ReplaceAll(text, "\n", f.ending)
	}
	return f.mark + text
}

// withoutConflicts takes a base for what it was before the conflicts in it.
// Where two commits have several common ancestors, git merges those first and
// hands the result in as the base, with markers around what it could not
// decide; the older state between them is what both sides did start from.
func withoutConflicts(text string) string {
	if !strings.Contains(text, "<<<<<<<") {
		return text
	}
	var b strings.Builder
	const outside, ours, older, theirs = 0, 1, 2, 3
	where, had := outside, false
	for line := range strings.Lines(text) {
		switch c := marker(line); {
		case c == '<' && where == outside:
			where, had = ours, false
		case c == '|' && where == ours:
			where, had = older, true
		case c == '=' && where != outside:
			where = theirs
		case c == '>' && where == theirs && had:
			where = outside
		case c != 0:
			return text // not as they are written: the reader will say so
		case where == outside || where == older:
			b.WriteString(line)
		}
	}
	if where != outside {
		return text
	}
	return b.String()
}

// marker is the character of a marker line, 0 for any other line.
func marker(line string) byte {
	if line == "" || !strings.ContainsRune("<|=>", rune(line[0])) {
		return 0
	}
	rest := strings.TrimLeft(line, line[:1])
	if len(line)-len(rest) < smallestMarker || rest != "" && rest[0] != ' ' && rest[0] != '\n' {
		return 0
	}
	return line[0]
}
