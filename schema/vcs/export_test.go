package vcs

import (
	"bufio"
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
