package vcs

import (
	"bufio"
	"bytes"
	"context"
	"errors"
	"fmt"
	"io"
	"strconv"
	"strings"
)

// nulTokens cuts a stream at NUL bytes; a token above MaxBlob ends it with bufio.ErrTooLong.
func nulTokens(r io.Reader) *bufio.Scanner {
	s := bufio.NewScanner(r)
	s.Buffer(make([]byte, 0, 64<<10), MaxBlob)
	s.Split(func(data []byte, atEOF bool) (int, []byte, error) {
		if i := bytes.IndexByte(data, 0); i >= 0 {
			return i + 1, data[:i], nil
		}
		if atEOF && len(data) > 0 {
			return len(data), data, nil
		}
		return 0, nil, nil
	})
	return s
}

// list runs a git command that prints NUL-terminated lines and hands each to take, at most MaxEntries of them.
func (g *runner) list(ctx context.Context, take func(line string) error, args ...string) error {
	c, err := g.start(ctx, args...)
	if err != nil {
		return err
	}
	_ = c.in.Close()
	lines := nulTokens(c.out)
	count := 0
	for err == nil && lines.Scan() {
		if count++; count > MaxEntries {
			err = fmt.Errorf("more than %d files: %w", MaxEntries, ErrTooLarge)
			break
		}
		err = take(lines.Text())
	}
	if err == nil && errors.Is(lines.Err(), bufio.ErrTooLong) {
		err = fmt.Errorf("path longer than %d bytes: %w", MaxBlob, ErrTooLarge)
	}
	if err != nil {
		c.stop()
		return fmt.Errorf("git %s: %w", args[0], err)
	}
	return c.wait(ctx)
}

// parseStaged reads one line of "ls-files --stage": mode, id, stage, a tab and the path.
func parseStaged(line string) (Entry, error) {
	head, path, found := strings.Cut(line, "\t")
	fields := strings.Fields(head)
	if !found || len(fields) != 3 {
		return Entry{}, fmt.Errorf("unexpected line %q", line)
	}
	mode, modeErr := strconv.ParseUint(fields[0], 8, 32)
	stage, stageErr := strconv.Atoi(fields[2])
	if err := errors.Join(modeErr, stageErr); err != nil {
		return Entry{}, fmt.Errorf("unexpected line %q: %w", line, err)
	}
	return Entry{Path: path, ID: fields[1], Mode: uint32(mode), Stage: stage, Size: -1}, nil
}

// parseListed reads one line of "ls-tree": mode, type, id, a tab and the path.
func parseListed(line string) (Entry, error) {
	head, path, found := strings.Cut(line, "\t")
	fields := strings.Fields(head)
	if !found || len(fields) != 3 {
		return Entry{}, fmt.Errorf("unexpected line %q", line)
	}
	mode, err := strconv.ParseUint(fields[0], 8, 32)
	if err != nil {
		return Entry{}, fmt.Errorf("unexpected line %q: %w", line, err)
	}
	if strings.Count(path, "/") > maxDepth {
		return Entry{}, fmt.Errorf("folders nested deeper than %d: %w", maxDepth, ErrTooLarge)
	}
	return Entry{Path: path, ID: fields[2], Mode: uint32(mode), Size: -1}, nil
}
