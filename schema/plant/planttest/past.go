package planttest

import (
	"bufio"
	"fmt"
	"io"
	"math/rand/v2"
	"slices"
)

// PastOptions say what history to make.
type PastOptions struct {
	// Runs and Files are the size of the plant, Commits the number of commits.
	Runs, Files, Commits int
	// Seed makes another history of the same size.
	Seed uint64
	// Steady makes a history of one line in which no label changes and no record
	// goes to another file, which programs that follow lines can follow too.
	Steady bool
}

// A Deed is what one commit does to one thing on site. The labels are those of
// the thing: Bears is the one it has after the deed, Gone the one it has not any
// more. Class is the word for the kind of work.
type Deed struct {
	Commit, Thing int
	Class         string
	Gone, Bears   string
}

// A Truth is what is known about a made-up history because it was made so.
type Truth struct {
	Deeds []Deed
	// Merges are the commits with two parents.
	Merges []int
	// Labels are all labels that runs, cords and panels ever bore, sorted.
	Labels []string
}

// Past writes a history as git fast-import reads it, onto refs/heads/main, and
// returns the truth about it. Commit n has the mark n and was made n hours into
// the year 2001. Besides the deeds, files are renamed, laid out anew and traded
// bundles between, which is nothing that happens to a record.
func Past(w io.Writer, o PastOptions) (Truth, error) {
	p := &past{
		steady: o.Steady, out: bufio.NewWriterSize(w, 1<<20), files: max(1, o.Files), random: rand.New(rand.NewPCG(o.Seed, 2)),
		seen: make(map[string]bool), dirty: make(map[int]bool), side: make(map[int]bool),
	}
	p.build((o.Runs + perPanel - 1) / perPanel)
	p.commit("first survey", 0, 0)
	for p.n < o.Commits {
		if !o.Steady && p.random.IntN(12) == 0 && p.n+10 < o.Commits {
			p.branch()
			continue
		}
		p.work(p.main)
	}
	for label := range p.seen {
		p.truth.Labels = append(p.truth.Labels, label)
	}
	slices.Sort(p.truth.Labels)
	return p.truth, p.out.Flush()
}

// past is the work of making a history. Main and side lines of a branch work on
// different panels, so that one state of the site serves both.
type past struct {
	out    *bufio.Writer
	random *rand.Rand
	truth  Truth
	seen   map[string]bool

	panels []*pastPanel
	things int
	// n is the number of the last commit, main that of the main line.
	n, main int
	// files is how many there are; paths are their names by now.
	files int
	paths []string
	// gone are paths to delete with the next commit, dirty the files to write.
	gone  []string
	dirty map[int]bool
	// side are the files that the side line wrote since it left, sideGone the
	// paths that it deleted.
	side     map[int]bool
	sideGone []string
	onSide   bool
	steady   bool
}

// commit writes the files that differ, on top of one or two parents.
func (p *past) commit(subject string, parent, other int) {
	p.n++
	p.say("commit refs/heads/main\nmark :%d\n", p.n)
	p.say("author Ada Moor <ada@example.org> %d +0100\ncommitter Ben Fell <ben@example.org> %d +0100\n", p.when(), p.when())
	p.say("data %d\n%s\n", len(subject), subject)
	if parent > 0 {
		p.say("from :%d\n", parent)
	}
	if other > 0 {
		p.say("merge :%d\n", other)
		p.truth.Merges = append(p.truth.Merges, p.n)
	}
	for _, path := range p.gone {
		p.say("D %s\n", path)
	}
	if parent == 0 {
		p.write("plant.hcl", p.common())
	}
	texts := p.texts()
	for f := range p.files {
		if p.dirty[f] {
			p.write(p.paths[f], texts[f])
		}
	}
	p.gone = nil
	clear(p.dirty)
}

// when is the time of the commit at hand, in seconds.
func (p *past) when() int { return 978303600 + 3600*p.n }

// say writes to the stream. A failure is kept by the writer and met when the
// history is finished.
func (p *past) say(format string, args ...any) { _, _ = fmt.Fprintf(p.out, format, args...) }

func (p *past) write(path, text string) {
	p.say("M 100644 inline %s\ndata %d\n%s\n", path, len(text), text)
}

func (p *past) touch(f int) {
	p.dirty[f] = true
	if p.onSide {
		p.side[f] = true
	}
}

// work makes one commit of one to three deeds on a parent, and returns it.
func (p *past) work(parent int) int {
	done := make(map[int]bool)
	for range 1 + p.random.IntN(3) {
		p.deed(done)
	}
	p.commit(fmt.Sprintf("work of day %d", p.n+1), parent, 0)
	if !p.onSide {
		p.main = p.n
	}
	return p.n
}

// branch leaves the main line, works on both sides and joins them. Some merges
// hold a deed of their own.
func (p *past) branch() {
	at := p.main
	for range 1 + p.random.IntN(3) {
		p.onSide = true
		at = p.work(at)
		p.onSide = false
		p.work(p.main)
	}
	if p.random.IntN(4) == 0 {
		p.deed(make(map[int]bool))
	}
	for f := range p.side {
		p.dirty[f] = true
	}
	clear(p.side)
	p.gone, p.sideGone = append(p.gone, p.sideGone...), nil
	p.commit("join the lines", p.main, at)
	p.main = p.n
}
