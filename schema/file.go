package schema

import (
	"cmp"
	"fmt"
	"path"
	"runtime"
	"slices"
	"strings"
	"sync"

	"homerun/schema/block"
)

// A File is what one file of text holds: its records in their places, and its
// problems in the order of the text. It is immutable.
type File struct {
	Path     string
	Entries  []Entry
	Problems []Problem
}

// A Reader reads files and remembers every block of text it has read, so that
// the same block in another commit, or moved to another file, is the same
// Record and costs nothing. It may be used by several goroutines.
type Reader struct {
	mu       sync.Mutex
	readings map[string]*reading
	// older are those that were not asked for again since there were most bytes of
	// text, first those that were read before there was a bound.
	older, first map[string]*reading
	size, most   int
}

// NewReader returns a Reader that remembers nothing yet.
func NewReader() *Reader {
	return &Reader{readings: make(map[string]*reading)}
}

// Bound lets the reader forget: of the blocks that it reads from now on it remembers
// the last ones of so many bytes that it was asked for, and at most twice as many. A
// block that was forgotten is read again, and is another Record then.
func (rd *Reader) Bound(most int) {
	rd.mu.Lock()
	defer rd.mu.Unlock()
	if rd.first == nil {
		rd.first, rd.readings = rd.readings, make(map[string]*reading)
	}
	rd.most = most
}

// ReadFile reads the text of one file. Whatever is wrong with it is among the
// file's problems; what can be read is among its entries.
func (rd *Reader) ReadFile(name, text string) *File {
	f := &File{Path: name}
	chunks, problems := block.Split(text)
	for _, p := range problems {
		f.splitProblem(text, p)
	}
	f.Entries = make([]Entry, 0, len(chunks))
	for _, c := range chunks {
		f.add(rd.read(c.Text), c.Line)
	}
	f.bound()
	return f
}

// mostProblems bounds the mistakes listed of one file: in a file that is
// something else altogether, every line is one.
const mostProblems = 100

// bound keeps the first problems of the text and counts the rest.
func (f *File) bound() {
	slices.SortStableFunc(f.Problems, func(a, b Problem) int {
		return cmp.Or(cmp.Compare(a.At.Line, b.At.Line), cmp.Compare(a.At.Column, b.At.Column))
	})
	left := len(f.Problems) - mostProblems
	if left <= 0 {
		return
	}
	f.Problems = f.Problems[:mostProblems:mostProblems]
	f.Problems = append(f.Problems, Problem{
		Code: Unreadable, At: f.Problems[mostProblems-1].At,
		Message: fmt.Sprintf("%s holds %d more mistakes, which are not listed", Printable(path.Base(f.Path)), left), Next: "mend the ones above first",
	})
}

func (rd *Reader) read(text string) *reading {
	rd.mu.Lock()
	known := rd.known(text)
	rd.mu.Unlock()
	if known != nil {
		return known
	}
	fresh := read(strings.Clone(text)) // a part would hold the whole file's text
	rd.mu.Lock()
	defer rd.mu.Unlock()
	if known := rd.known(text); known != nil {
		return known // somebody read the same text meanwhile: one of the two is enough
	}
	rd.remember(fresh)
	return fresh
}

// recall remembers blocks as if they had been asked for again.
func (rd *Reader) recall(all []piece) {
	rd.mu.Lock()
	defer rd.mu.Unlock()
	for i := range all {
		if r := all[i].reading; !all[i].left && rd.known(r.text) == nil {
			rd.remember(r)
		}
	}
}

// known finds what was read of a text before.
func (rd *Reader) known(text string) *reading {
	if r := rd.readings[text]; r != nil {
		return r
	}
	if r := rd.first[text]; r != nil {
		return r
	}
	r := rd.older[text]
	if r != nil {
		rd.remember(r)
	}
	return r
}

func (rd *Reader) remember(r *reading) {
	if rd.most > 0 && rd.size >= rd.most {
		rd.older, rd.readings, rd.size = rd.readings, make(map[string]*reading), 0
	}
	rd.readings[r.text] = r
	rd.size += len(r.text)
}

// A Document is the text of one file, yet to be read.
type Document struct{ Path, Text string }

// ReadFiles reads several files side by side and returns them in the order
// given.
func (rd *Reader) ReadFiles(texts []Document) []*File {
	files := make([]*File, len(texts))
	var wait sync.WaitGroup
	turns := make(chan struct{}, runtime.GOMAXPROCS(0))
	for i, t := range texts {
		turns <- struct{}{}
		wait.Go(func() {
			defer func() { <-turns }()
			files[i] = rd.ReadFile(t.Path, t.Text)
		})
	}
	wait.Wait()
	return files
}

func (f *File) splitProblem(text string, p block.Problem) {
	problem := Problem{Code: codeOf(p.Code), At: locate(f.Path, 1, text, p.At), Message: p.Message, Next: p.Next}
	if p.Also != (block.Range{}) {
		problem.Also = []Note{{At: locate(f.Path, 1, text, p.Also), Message: "see also here"}}
	}
	f.Problems = append(f.Problems, problem)
}

// add takes what a block holds that starts on a line.
func (f *File) add(r *reading, line int) {
	if r.record != nil {
		f.Entries = append(f.Entries, Entry{Record: r.record, Path: f.Path, Line: line})
	}
	for i := range r.faults {
		fault := &r.faults[i]
		p := Problem{Code: fault.code, At: locate(f.Path, line, r.text, fault.at), Message: fault.message, Next: fault.next}
		if fault.record != nil {
			p.Kind, p.Label = fault.record.Kind.Name, fault.record.Name()
		}
		if fault.also != (block.Range{}) {
			p.Also = []Note{{At: locate(f.Path, line, r.text, fault.also), Message: "first written here"}}
		}
		f.Problems = append(f.Problems, p)
	}
}
