package vcs

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"os"
	"slices"
	"strconv"
	"strings"
	"time"
)

// Resolve gives the one commit that rev names: a full or short id, a branch, a tag, HEAD, HEAD~2 and all of git's
// grammar for a single commit. Where no such name exists, rev may be a date, "2019-03-03" or
// "2019-03-03T12:00:00Z": then it is the newest commit on HEAD's first-parent line that was entered (by its
// committer's clock) at or before that time. A date alone means the end of that day, and like a time without a zone
// it is read in Options.Zone. Errors: ErrUnknownRevision, ErrNoCommit on a branch without a commit.
func (r *Repo) Resolve(ctx context.Context, rev string) (Commit, error) {
	if rev == "" || len(rev) > maxRevision || strings.ContainsAny(rev, "\n\x00") {
		return Commit{}, fmt.Errorf("%.80q: %w", rev, ErrUnknownRevision)
	}
	if c, err := r.quickCommit(ctx, rev); err == nil {
		return c, nil
	}
	id, err := r.reader.resolve(ctx, rev)
	if when, ok := parseDate(rev, r.zone); ok && err != nil && ctx.Err() == nil {
		id, err = r.atDate(ctx, "HEAD", rev, when)
	}
	if err != nil {
		return Commit{}, err
	}
	return r.commit(ctx, id)
}

// OnDay gives the newest commit on the first-parent line of from, itself included, that was entered at or before a
// date or time as Resolve reads them. Errors: ErrUnknownRevision where there is none, or where it is no date.
func (r *Repo) OnDay(ctx context.Context, from, date string) (Commit, error) {
	when, ok := parseDate(date, r.zone)
	if !ok {
		return Commit{}, fmt.Errorf("%.80q is no date: %w", date, ErrUnknownRevision)
	}
	id, err := r.atDate(ctx, from, date, when)
	if err != nil {
		return Commit{}, err
	}
	return r.commit(ctx, id)
}

// commit reads one commit by its id.
func (r *Repo) commit(ctx context.Context, id string) (Commit, error) {
	text, err := r.quickly().commit(id)
	if err != nil {
		text, err = r.reader.commit(ctx, id)
	}
	if err != nil {
		return Commit{}, err
	}
	return r.parsed(ctx, id, text)
}

// parsed is a commit as its text tells it.
func (r *Repo) parsed(ctx context.Context, id string, text []byte) (Commit, error) {
	c, encoding, err := parseCommit(id, string(text))
	if err == nil && encoding != "" {
		// Only git knows how to turn every old encoding into UTF-8.
		return r.reencoded(ctx, id)
	}
	if err != nil {
		return Commit{}, err
	}
	return r.bounded(c), nil
}

// bounded takes the parents from a commit at which a shallow clone ends.
func (r *Repo) bounded(c Commit) Commit {
	if r.form.Shallow && slices.Contains(r.boundary(), c.ID) && len(c.Parents) > 0 {
		c.Parents, c.Boundary = nil, true
	}
	return c
}

// boundary reads the list of commits at which a shallow clone ends; it is short, and a fetch may change it.
func (r *Repo) boundary() []string {
	text, _ := os.ReadFile(r.place.shallowFile)
	return strings.Fields(string(text))
}

// parseDate reads a date or time of the forms that Resolve allows.
func parseDate(text string, zone *time.Location) (time.Time, bool) {
	if day, err := time.ParseInLocation(time.DateOnly, text, zone); err == nil {
		return day.AddDate(0, 0, 1).Add(-time.Second), true
	}
	for _, layout := range []string{time.RFC3339, "2006-01-02T15:04:05", "2006-01-02T15:04"} {
		if when, err := time.ParseInLocation(layout, text, zone); err == nil {
			return when, true
		}
	}
	return time.Time{}, false
}

// atDate finds the commit of a time on the line of another. Git's own reading of dates depends on the clock, so it is given seconds.
func (r *Repo) atDate(ctx context.Context, from, text string, when time.Time) (string, error) {
	head, err := r.reader.resolve(ctx, from)
	if err != nil {
		return "", fmt.Errorf("%s: %w", text, err)
	}
	seconds := strconv.FormatInt(max(when.Unix(), 0), 10)
	out, err := r.git.output(ctx, "rev-list", "-1", "--first-parent", "--min-age="+seconds, head)
	if err != nil {
		return "", fmt.Errorf("%s: %w", text, err)
	}
	if id := string(bytes.TrimSpace(out)); hexID(id) {
		return id, nil
	}
	return "", fmt.Errorf("%s: no commit at or before it: %w", text, newCommands(r.git, r.place).unknown(ErrUnknownRevision))
}

// MergeBase gives the id of the best common ancestor of two revisions. Error: ErrNoMergeBase.
func (r *Repo) MergeBase(ctx context.Context, a, b string) (string, error) {
	first, err := r.reader.resolve(ctx, a)
	if err != nil {
		return "", err
	}
	second, err := r.reader.resolve(ctx, b)
	if err != nil {
		return "", err
	}
	out, err := r.git.output(ctx, "merge-base", first, second)
	var failed *gitError
	if errors.As(err, &failed) && failed.status == 1 && failed.said == "" {
		return "", fmt.Errorf("%s and %s: %w", a, b, ErrNoMergeBase)
	}
	if err != nil {
		return "", err
	}
	return string(bytes.TrimSpace(out)), nil
}

// IsDate says whether a text is a date or time as Resolve reads them.
func IsDate(text string) bool {
	_, ok := parseDate(text, time.UTC)
	return ok
}
