package vcs

import (
	"bufio"
	"context"
	"errors"
	"fmt"
	"iter"
	"path"
	"strconv"
	"time"
)

// LogOptions choose the commits that Log gives.
type LogOptions struct {
	// From is where the walk starts, "" for HEAD; Not ends it at these and all before them.
	From string
	Not  []string
	// FirstParent follows only the first parent of a merge and compares with it alone.
	FirstParent bool
	// Since and Until bound the committer's time, both inclusive; zero is no bound. As in git, the walk ends at the
	// first commits older than Since, so one with a wrong clock hides what lies before it.
	Since, Until time.Time
	// Changes fills Commit.Changed.
	Changes bool
	// Paths keeps only commits that touch one of these files or folders, relative to the top, on any branch of the
	// history, also where a merge undid it; Changed then holds these paths alone.
	Paths []string
	// Max ends the walk after so many commits; 0 is no end.
	Max int
}

// Log walks history, newest first, never a parent before its child. It is read while git still walks; ending the
// range ends git. An error comes last and alone.
func (r *Repo) Log(ctx context.Context, o LogOptions) iter.Seq2[Commit, error] {
	return func(yield func(Commit, error) bool) {
		args, err := r.logArgs(ctx, o)
		if err != nil {
			yield(Commit{}, err)
			return
		}
		r.walk(ctx, args, nil, yield)
	}
}

// logCommand prints what parseLog reads. Everything that config could change is stated.
func logCommand() []string {
	return []string{
		"log", "-z", "--pretty=raw", "--encoding=UTF-8", "--no-color", "--no-decorate", "--no-notes", "--no-mailmap",
		"--no-expand-tabs", "--no-abbrev", "--no-renames", "--no-relative", "--no-ext-diff", "--no-textconv",
		"--ignore-submodules=none", "-O/dev/null", "--topo-order",
	}
}

// logArgs words the whole command. Revisions become ids, so that none can be taken for an option or a range.
func (r *Repo) logArgs(ctx context.Context, o LogOptions) ([]string, error) {
	from := o.From
	if from == "" {
		from = "HEAD"
	}
	start, err := r.Resolve(ctx, from)
	if err != nil {
		return nil, err
	}
	args := append(logCommand(), changeArgs(o)...)
	if !o.Since.IsZero() {
		args = append(args, "--max-age="+strconv.FormatInt(max(o.Since.Unix(), 0), 10))
	}
	if !o.Until.IsZero() {
		args = append(args, "--min-age="+strconv.FormatInt(max(o.Until.Unix(), 0), 10))
	}
	if o.Max > 0 {
		args = append(args, "--max-count="+strconv.Itoa(o.Max))
	}
	args = append(args, start.ID)
	for _, rev := range o.Not {
		end, err := r.Resolve(ctx, rev)
		if err != nil {
			return nil, err
		}
		args = append(args, "^"+end.ID)
	}
	args = append(args, "--")
	for _, p := range o.Paths {
		args = append(args, ":(top,literal)"+path.Clean(p))
	}
	return args, nil
}

// changeArgs words which differences are wanted, against which parents.
func changeArgs(o LogOptions) []string {
	var args []string
	switch {
	case !o.Changes:
		args = append(args, "--no-patch")
	case o.FirstParent:
		args = append(args, "--raw", "--diff-merges=first-parent")
	default:
		args = append(args, "--raw", "--diff-merges=separate")
	}
	if o.FirstParent {
		args = append(args, "--first-parent")
	}
	if len(o.Paths) > 0 {
		args = append(args, "--full-history")
	}
	return args
}

// walk runs git and hands over each commit as soon as all of it was read. The names go to git's standard input.
func (r *Repo) walk(ctx context.Context, args, names []string, yield func(Commit, error) bool) {
	c, err := r.git.start(ctx, args...)
	if err != nil {
		yield(Commit{}, err)
		return
	}
	go feed(c.in, names)
	tokens := nulTokens(c.out)
	var p logParser
	for tokens.Scan() {
		done, err := p.take(tokens.Text())
		if err != nil {
			c.stop()
			yield(Commit{}, fmt.Errorf("git log: %w", err))
			return
		}
		if done != nil && !yield(r.bounded(*done), nil) {
			c.stop()
			return
		}
	}
	if errors.Is(tokens.Err(), bufio.ErrTooLong) {
		c.stop()
		yield(Commit{}, fmt.Errorf("git log: message above %d bytes: %w", MaxBlob, ErrTooLarge))
		return
	}
	if err := c.wait(ctx); err != nil {
		yield(Commit{}, err)
		return
	}
	if last := p.finish(); last != nil {
		yield(r.bounded(*last), nil)
	}
}

// reencoded reads one commit through git, with its text turned into UTF-8.
func (r *Repo) reencoded(ctx context.Context, id string) (Commit, error) {
	found, failed := Commit{}, error(nil)
	r.walk(ctx, append(logCommand(), "--no-patch", "--no-walk", id, "--"), nil, func(c Commit, err error) bool {
		found, failed = c, err
		return failed == nil
	})
	if failed == nil && found.ID == "" {
		failed = fmt.Errorf("%s: %w", id, ErrMissingObject)
	}
	return found, failed
}
