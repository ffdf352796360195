package vcs

import (
	"bufio"
	"context"
	"errors"
	"fmt"
	"io"
)

// Pour reads many contents in the order of ids, by one git of its own, and hands each to take with its place in ids.
// The bytes are good until take returns; a content above MaxBlob is nil and not read. An error of take ends it and is
// returned as it is. Errors: ErrMissingObject, ErrNotBlob.
//
// It keeps nothing and asks nothing twice, for reading whole histories; Blobs is the one for a commit's files.
func (r *Repo) Pour(ctx context.Context, ids []string, take func(i int, data []byte) error) error {
	for _, id := range ids {
		if !hexID(id) {
			return fmt.Errorf("%q is no object id: %w", id, ErrMissingObject)
		}
	}
	if len(ids) == 0 {
		return nil
	}
	done := 0
	if len(ids) <= fewPoured {
		var err error
		if done, err = r.pourQuick(ctx, ids, take); err != nil || done == len(ids) {
			return err
		}
	}
	return r.pour(ctx, ids[done:], func(i int, data []byte) error { return take(done+i, data) })
}

// fewPoured is how many contents are read in this process. Whole histories are put together by git in two thirds of
// the time, on a processor of its own.
const fewPoured = 200

// pourQuick reads in this process as many contents as it can, one after another. Nobody else waits for its hand: who
// takes a content may wait for somebody who reads another one.
func (r *Repo) pourQuick(ctx context.Context, ids []string, take func(i int, data []byte) error) (int, error) {
	if r.open() == nil {
		return 0, nil
	}
	h := r.quickly().borrow()
	defer r.quickly().giveBack(h)
	for i, id := range ids {
		if ctx.Err() != nil {
			return i, fmt.Errorf("reading: %w", context.Cause(ctx))
		}
		var taken error
		if err := h.tell(id, kindBlob, func(data []byte) { taken = take(i, data) }); err != nil {
			return i, nil // git knows better
		}
		if taken != nil {
			return i, taken
		}
	}
	return len(ids), nil
}

func (r *Repo) pour(ctx context.Context, ids []string, take func(i int, data []byte) error) error {
	c, err := r.git.start(ctx, "cat-file", "--batch", "--buffer")
	if err != nil {
		return err
	}
	go feed(c.in, ids)
	p := pourer{lines: bufio.NewReaderSize(c.out, 256<<10)}
	for i, id := range ids {
		data, err := p.next(id)
		if errors.Is(err, errBroken) {
			return c.explain(ctx, err)
		}
		if err == nil {
			err = take(i, data)
		}
		if err != nil {
			c.stop()
			return err
		}
	}
	return c.wait(ctx)
}

// pourer reads contents into the same bytes again and again.
type pourer struct {
	lines *bufio.Reader
	room  []byte
}

func (p *pourer) next(id string) ([]byte, error) {
	line, err := readLine(p.lines)
	if err != nil {
		return nil, err
	}
	head, err := parseHeader(id, line)
	if err != nil {
		return nil, err
	}
	err = head.fits("blob")
	if errors.Is(err, ErrTooLarge) {
		if _, err = io.CopyN(io.Discard, p.lines, head.size+1); err != nil {
			err = fmt.Errorf("%w: %w", errBroken, err)
		}
		return nil, err
	}
	if err != nil {
		return nil, err
	}
	if int64(cap(p.room)) < head.size || p.room == nil {
		p.room = make([]byte, head.size+head.size/2)
	}
	data := p.room[:head.size]
	if _, err := io.ReadFull(p.lines, data); err != nil {
		return nil, fmt.Errorf("%w: %w", errBroken, err)
	}
	if end, err := p.lines.ReadByte(); err != nil || end != '\n' {
		return nil, errBroken
	}
	return data, nil
}

// readIDs reads one object id a line until the command has no more to say.
func readIDs(c *child) ([]string, error) {
	var ids []string
	lines := bufio.NewScanner(c.out)
	for lines.Scan() {
		if !hexID(lines.Text()) {
			return nil, fmt.Errorf("%w: %q", errBroken, lines.Text())
		}
		ids = append(ids, lines.Text())
	}
	if err := lines.Err(); err != nil {
		return nil, fmt.Errorf("%w: %w", errBroken, err)
	}
	return ids, nil
}
