package vcs

import (
	"bufio"
	"context"
	"errors"
	"fmt"
	"io"
	"strconv"
	"strings"
)

// errBroken marks a child that ended or answered what it should not: nothing more can be read from it.
var errBroken = errors.New("unexpected end of git's answer")

// header is the first line of a cat-file answer. A status other than "" means there is no object to speak of.
type header struct {
	asked, id, kind, status string
	size                    int64
}

// parseHeader reads "ID TYPE SIZE" or "NAME missing"; NAME is what was asked and may hold spaces.
func parseHeader(asked, line string) (header, error) {
	for _, status := range []string{"missing", "ambiguous"} {
		if line == asked+" "+status {
			return header{asked: asked, status: status}, nil
		}
	}
	fields := strings.Fields(line)
	if len(fields) != 3 || !hexID(fields[0]) {
		return header{}, fmt.Errorf("%w: %q", errBroken, line)
	}
	size, err := strconv.ParseInt(fields[2], 10, 64)
	if err != nil || size < 0 {
		return header{}, fmt.Errorf("%w: %q", errBroken, line)
	}
	return header{asked: asked, id: fields[0], kind: fields[1], size: size}, nil
}

// fits reports why the object may not be read as the kind wanted; nil when it may.
func (h header) fits(kind string) error {
	switch {
	case h.status != "":
		return fmt.Errorf("%s: %w", h.asked, ErrMissingObject)
	case h.kind != kind && kind == "blob":
		return fmt.Errorf("%s: %w but a %s", h.asked, ErrNotBlob, h.kind)
	case h.kind != kind:
		return fmt.Errorf("%s: %w: it is a %s", h.asked, ErrUnknownRevision, h.kind)
	case h.size > MaxBlob:
		return fmt.Errorf("%s: %d bytes, limit %d: %w", h.asked, h.size, MaxBlob, ErrTooLarge)
	}
	return nil
}

// batch is one long-lived cat-file, started when first asked and again after it broke.
type batch struct {
	git   *runner
	args  []string
	child *child
	lines *bufio.Reader
}

// ask puts one question and reads the first line of the answer.
func (b *batch) ask(ctx context.Context, name string) (header, error) {
	var h header
	err := b.with(ctx, func() error {
		if _, err := io.WriteString(b.child.in, name+"\n"); err != nil {
			return err
		}
		line, err := readLine(b.lines)
		if err != nil {
			return err
		}
		h, err = parseHeader(name, line)
		return err
	})
	return h, err
}

// read asks for the content of an object whose size is known and allowed.
func (b *batch) read(ctx context.Context, want header) ([]byte, error) {
	got, err := b.ask(ctx, want.id)
	if err != nil {
		return nil, err
	}
	if got.status != "" || got.size != want.size {
		b.stop()
		return nil, fmt.Errorf("%s: %w", want.id, ErrMissingObject)
	}
	var data []byte
	err = b.with(ctx, func() error {
		data, err = readContent(b.lines, got.size)
		return err
	})
	return data, err
}

// with runs one exchange. The child outlives the call, so cancelling the call must kill it to unblock the reading;
// after any failure it is out of step and is ended.
func (b *batch) with(ctx context.Context, exchange func() error) error {
	if err := ctx.Err(); err != nil {
		return fmt.Errorf("git %s: %w", b.args[0], context.Cause(ctx))
	}
	if b.child == nil {
		c, err := b.git.start(context.WithoutCancel(ctx), b.args...)
		if err != nil {
			return err
		}
		b.child, b.lines = c, bufio.NewReaderSize(c.out, 64<<10)
	}
	release := context.AfterFunc(ctx, b.child.cancel)
	if err := exchange(); err != nil {
		release()
		c := b.child
		b.child = nil
		return c.explain(ctx, err)
	}
	if !release() {
		// The call was cancelled as it ended: its child is killed, the next call starts another.
		b.stop()
	}
	return nil
}

// stop ends the child, if there is one.
func (b *batch) stop() {
	if b.child != nil {
		b.child.stop()
		b.child = nil
	}
}

// readLine reads one line without its end, of bounded length.
func readLine(r *bufio.Reader) (string, error) {
	line, err := r.ReadSlice('\n')
	if err != nil {
		return "", fmt.Errorf("%w: %w", errBroken, err)
	}
	return string(line[:len(line)-1]), nil
}

// readContent reads size bytes and the line end that cat-file puts behind them.
func readContent(r *bufio.Reader, size int64) ([]byte, error) {
	data := make([]byte, size)
	if _, err := io.ReadFull(r, data); err != nil {
		return nil, fmt.Errorf("%w: %w", errBroken, err)
	}
	if end, err := r.ReadByte(); err != nil || end != '\n' {
		return nil, errBroken
	}
	return data, nil
}
