package vcs

import (
	"bufio"
	"context"
	"io"
)

// ReadLog reads what "git log -z --pretty=raw --raw" printed.
func ReadLog(from io.Reader) (commits []Commit, err error) {
	tokens := nulTokens(from)
	var p logParser
	for tokens.Scan() {
		done, err := p.take(tokens.Text())
		if err != nil {
			return commits, err
		}
		if done != nil {
			commits = append(commits, *done)
		}
	}
	if last := p.finish(); last != nil {
		commits = append(commits, *last)
	}
	return commits, tokens.Err()
}

// ReadStaged and ReadListed read a line of "ls-files --stage" and of "ls-tree".
func ReadStaged(line string) (Entry, error) { return parseStaged(line) }

// ReadListed reads a line of "ls-tree".
func ReadListed(line string) (Entry, error) { return parseListed(line) }

// ReadBatch reads answers of "cat-file --batch" about an object, as long as they are ones.
func ReadBatch(asked string, from io.Reader) (contents [][]byte) {
	lines := bufio.NewReaderSize(from, 64<<10)
	for {
		line, err := readLine(lines)
		if err != nil {
			return contents
		}
		h, err := parseHeader(asked, line)
		if err != nil || h.fits("blob") != nil {
			return contents
		}
		data, err := readContent(lines, h.size)
		if err != nil {
			return contents
		}
		contents = append(contents, data)
	}
}

// ReadExtension reads a repository's own config.
func ReadExtension(from io.Reader) (string, error) { return extension(from) }

// ReadIndex reads an index file in this process.
func ReadIndex(from io.Reader) ([]Entry, error) { return decodeIndex(from) }

// StoredChanges and StoredVersions read from the packs in this process or not at all.
func StoredChanges(ctx context.Context, r *Repo, ids []string) ([]Commit, error) {
	s := r.open()
	if s == nil {
		return nil, ErrUnfit
	}
	return s.changes(ctx, ids)
}

// StoredVersions is Versions without git.
func StoredVersions(ctx context.Context, r *Repo, o Reading) error {
	s := r.open()
	if s == nil {
		return ErrUnfit
	}
	return s.versions(ctx, o)
}

// Patched carries out a change as packs have them, and gives the edits that it amounts to.
func Patched(base, delta []byte) ([]byte, []Edit, error) {
	var w weigher
	text, parts, err := patch(nil, base, delta, nil)
	if err != nil {
		return nil, nil, err
	}
	w.parts = parts
	return text, w.edited(len(base), len(text)), nil
}

// Differ gives the one edit between two contents.
func Differ(was, is []byte) []Edit { return differ(was, is, nil) }

// PackedObject reads the head of an object in a pack with a given index, and unpacks it.
func PackedObject(data, index []byte, id [20]byte) ([]byte, error) {
	p := &pack{data: data, index: index}
	if err := p.check(); err != nil {
		return nil, err
	}
	h := (&store{packs: []*pack{p}}).hand()
	o, err := h.content(h.find(id))
	if err != nil {
		return nil, err
	}
	return o.data, nil
}
