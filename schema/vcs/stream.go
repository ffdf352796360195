package vcs

import (
	"bufio"
	"context"
	"fmt"
	"io"
	"strings"
)

// feed writes the names, one a line, and closes the child's input. It must run beside the reading: git answers
// while it is still being asked, and either side would block on a full pipe.
func feed(in io.WriteCloser, names []string) {
	_, _ = io.WriteString(in, strings.Join(names, "\n"))
	if len(names) > 0 {
		_, _ = io.WriteString(in, "\n")
	}
	_ = in.Close()
}

// sizes asks kind and size of many objects at once, in order. What is no object id counts as missing and is not
// asked, since git would take it for a revision.
func (g *runner) sizes(ctx context.Context, ids []string) ([]header, error) {
	heads := make([]header, 0, len(ids))
	var asked []string
	for _, id := range ids {
		if hexID(id) {
			asked = append(asked, id)
		}
	}
	c, err := g.start(ctx, "cat-file", "--batch-check", "--buffer")
	if err != nil {
		return nil, err
	}
	go feed(c.in, asked)
	lines := bufio.NewReaderSize(c.out, 64<<10)
	for _, id := range ids {
		head := header{asked: id, status: "missing"}
		if hexID(id) {
			var line string
			if line, err = readLine(lines); err == nil {
				head, err = parseHeader(id, line)
			}
		}
		if err != nil {
			return nil, c.explain(ctx, err)
		}
		heads = append(heads, head)
	}
	return heads, c.wait(ctx)
}

// stream reads the contents of many blobs from one cat-file of its own.
type stream struct {
	ctx   context.Context
	child *child
	lines *bufio.Reader
	err   error
}

func newStream(ctx context.Context, git *runner, heads []header) *stream {
	var wanted []string
	for _, h := range heads {
		if h.fits("blob") == nil {
			wanted = append(wanted, h.id)
		}
	}
	s := &stream{ctx: ctx}
	if len(wanted) == 0 {
		return s
	}
	if s.child, s.err = git.start(ctx, "cat-file", "--batch", "--buffer"); s.err != nil {
		return s
	}
	go feed(s.child.in, wanted)
	s.lines = bufio.NewReaderSize(s.child.out, 256<<10)
	return s
}

// next reads the next content. An error that wraps errBroken ends the stream.
func (s *stream) next(want header) ([]byte, error) {
	if err := want.fits("blob"); err != nil {
		return nil, err
	}
	if s.err != nil {
		return nil, fmt.Errorf("%w: %w", errBroken, s.err)
	}
	line, err := readLine(s.lines)
	if err != nil {
		return nil, err
	}
	got, err := parseHeader(want.id, line)
	if err != nil {
		return nil, err
	}
	if got.id != want.id || got.size != want.size {
		return nil, fmt.Errorf("%w: %q", errBroken, line)
	}
	return readContent(s.lines, got.size)
}

// failure explains why the stream broke.
func (s *stream) failure(seen error) error {
	if s.child == nil {
		return s.err
	}
	c := s.child
	s.child = nil
	return c.explain(s.ctx, seen)
}

// stop ends the child, if it still runs.
func (s *stream) stop() {
	if s.child != nil {
		s.child.stop()
	}
}
