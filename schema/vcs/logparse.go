package vcs

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
)

// logParser puts commits together from the NUL-separated tokens of "git log -z --pretty=raw --raw". A token is
// either "commit ID ..." with header and message, a line ":MODES IDS STATUS" of the differences, the path behind
// such a line, or the empty end of the differences. The first line of the differences stands at the end of the
// commit's own token; no line of a message can be taken for it, since git indents them by four spaces. A merge is
// printed once for each parent from which it differs.
type logParser struct {
	pending *Commit
	parent  int
	line    string
}

// take reads one token and gives the commit that it proves to be complete, if any.
func (p *logParser) take(token string) (*Commit, error) {
	switch {
	case p.line != "":
		return nil, p.delta(token)
	case token == "":
		return nil, nil //nolint:nilnil // the end of the differences completes nothing: another parent may follow
	case token[0] == ':':
		p.line = token
		return nil, nil //nolint:nilnil // the path is yet to come
	case strings.HasPrefix(token, "commit "):
		return p.header(token)
	}
	return nil, fmt.Errorf("unexpected %.80q", token)
}

// finish gives the last commit.
func (p *logParser) finish() *Commit { return p.pending }

func (p *logParser) header(token string) (*Commit, error) {
	first, rest, _ := strings.Cut(strings.TrimPrefix(token, "commit "), "\n")
	head, message, _ := strings.Cut(rest, "\n\n")
	if strings.HasPrefix(message, ":") {
		message, p.line = "", message
	} else if at := strings.LastIndex(message, "\n:"); at >= 0 {
		message, p.line = message[:at], message[at+1:]
	}
	id, from, _ := strings.Cut(first, " (from ")
	c, _, err := parseCommit(id, head+"\n\n"+unindent(message))
	if err != nil {
		return nil, err
	}
	p.parent = max(slices.Index(c.Parents, strings.TrimSuffix(from, ")")), 0)
	if p.pending != nil && p.pending.ID == id {
		return nil, nil //nolint:nilnil // the same merge, seen from another parent
	}
	done := p.pending
	p.pending = &c
	return done, nil
}

// delta joins a line of differences with its path.
func (p *logParser) delta(path string) error {
	fields := strings.Fields(strings.TrimPrefix(p.line, ":"))
	if len(fields) != 5 || p.pending == nil || path == "" {
		return fmt.Errorf("unexpected difference %.200q of %.80q", p.line, path)
	}
	p.line = ""
	before, errBefore := strconv.ParseUint(fields[0], 8, 32)
	after, errAfter := strconv.ParseUint(fields[1], 8, 32)
	if errBefore != nil || errAfter != nil {
		return fmt.Errorf("unexpected modes %q", fields[:2])
	}
	p.pending.Changed = append(p.pending.Changed, Delta{
		Path: path, Parent: p.parent,
		Before: present(fields[2]), After: present(fields[3]), BeforeMode: uint32(before), AfterMode: uint32(after),
	})
	return nil
}

// present turns the id of all zeros, which stands for no file, into "".
func present(id string) string {
	if strings.Trim(id, "0") == "" {
		return ""
	}
	return id
}

// unindent takes the four spaces off every line of a message.
func unindent(message string) string {
	var b strings.Builder
	for line := range strings.Lines(message) {
		b.WriteString(strings.TrimPrefix(line, "    "))
	}
	return b.String()
}
