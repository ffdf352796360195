package cli

import (
	"context"
	"errors"
	"strings"

	"homerun/diffreport/history"
	"homerun/schema/vcs"
)

// facts adds to the events what their commits say of themselves, and what their
// signatures are worth by the keys in some files.
func (s *source) facts(ctx context.Context, events []history.Event, keys []string) error {
	known, err := s.revisions(ctx, events, keys)
	if err != nil {
		return err
	}
	for i := range events {
		e := &events[i]
		e.Revision = known[e.ID]
		if e.Via != "" {
			e.Merged = known[e.Via]
		}
	}
	return nil
}

// revisions reads the commits of events, and the merges that brought them.
func (s *source) revisions(ctx context.Context, events []history.Event, keys []string) (map[string]history.Revision, error) {
	known := make(map[string]history.Revision)
	var commits []vcs.Commit
	for i := range events {
		for _, id := range []string{events[i].ID, events[i].Via} {
			if _, again := known[id]; again || id == "" {
				continue
			}
			c, err := s.repo.Resolve(ctx, id)
			if err != nil {
				return nil, err
			}
			commits = append(commits, c)
			known[id] = revisionOf(c)
		}
	}
	verdicts, err := s.worth(ctx, commits, keys)
	if err != nil {
		return nil, err
	}
	for _, c := range commits {
		r := known[c.ID]
		r.Signature, r.Orders = signatureOf(c, verdicts), ordered(c)
		known[c.ID] = r
	}
	return known, nil
}

// worth judges signatures by the keys in some files; without any, none is judged.
func (s *source) worth(ctx context.Context, commits []vcs.Commit, files []string) (map[string]vcs.Verdict, error) {
	if len(files) == 0 {
		return nil, nil
	}
	paths := make([]string, len(files))
	for i, file := range files {
		paths[i] = s.app.userPath(file)
	}
	keys, err := vcs.OpenKeys(ctx, paths...)
	if err != nil {
		return nil, err
	}
	verdicts, err := s.repo.Verdicts(ctx, commits, keys)
	return verdicts, errors.Join(err, keys.Close())
}

// ordered is what a commit's trailers say that it carries out. Trailers are the
// last paragraph of a message.
func ordered(c vcs.Commit) []string {
	last := c.Body[strings.LastIndex(c.Body, "\n\n")+1:]
	var all []string
	for line := range strings.Lines(last) {
		key, value, found := strings.Cut(line, ":")
		if found && strings.EqualFold(strings.TrimSpace(key), orderTrailer) {
			all = append(all, strings.TrimSpace(value))
		}
	}
	return all
}
