package vcs

import (
	"errors"
	"fmt"
	"strconv"
	"strings"
	"time"
)

// parseCommit reads a commit object as stored: header lines, an empty line, the message. It also gives the encoding
// that the commit declares, "" for UTF-8.
func parseCommit(id, text string) (Commit, string, error) {
	// Git ends a message at a NUL byte.
	text, _, _ = strings.Cut(text, "\x00")
	head, message, _ := strings.Cut(text, "\n\n")
	c := Commit{ID: id}
	encoding := ""
	for line := range strings.SplitSeq(head, "\n") {
		key, value, _ := strings.Cut(line, " ")
		switch key {
		case "tree":
			c.Tree = value
		case "parent":
			c.Parents = append(c.Parents, value)
		case "author":
			c.Author = parsePerson(value)
		case "committer":
			c.Committer = parsePerson(value)
		case "encoding":
			encoding = value
		case "gpgsig", "gpgsig-sha256":
			c.Signed, c.SignedWith = true, signatureForm(value)
		}
	}
	if !hexID(c.Tree) {
		return Commit{}, "", fmt.Errorf("commit %s: %w", id, errors.New("not a commit object"))
	}
	c.Subject, c.Body = splitMessage(message)
	if strings.EqualFold(encoding, "utf-8") || strings.EqualFold(encoding, "utf8") {
		encoding = ""
	}
	return c, encoding, nil
}

// splitMessage divides a message as git does: leading blank lines do not count, the subject is everything up to the
// next blank line, joined by spaces.
func splitMessage(message string) (subject, body string) {
	lines := strings.Split(message, "\n")
	at := 0
	for at < len(lines) && strings.TrimSpace(lines[at]) == "" {
		at++
	}
	var words []string
	for ; at < len(lines); at++ {
		line := strings.TrimRight(lines[at], " \t\r\v\f")
		if line == "" {
			break
		}
		words = append(words, line)
	}
	for at < len(lines) && strings.TrimSpace(lines[at]) == "" {
		at++
	}
	return strings.Join(words, " "), strings.TrimRight(strings.Join(lines[at:], "\n"), " \t\r\n\v\f")
}

// parsePerson reads "NAME <EMAIL> SECONDS +ZONE". What is damaged stays empty, as git shows it.
func parsePerson(text string) Person {
	name, rest, found := strings.Cut(text, "<")
	if !found {
		return Person{Name: strings.TrimSpace(text)}
	}
	email, _, _ := strings.Cut(rest, ">")
	p := Person{Name: strings.TrimRight(name, " \t\r\v\f"), Email: email, When: time.Unix(0, 0).UTC()}
	fields := strings.Fields(rest[strings.LastIndexByte(rest, '>')+1:])
	if len(fields) == 0 {
		return p
	}
	// The last second of the year 9999: beyond it no date can be written down.
	const last = 253402300799
	seconds, err := strconv.ParseInt(fields[0], 10, 64)
	if err != nil || seconds < 0 || seconds > last {
		return p
	}
	p.When = time.Unix(seconds, 0).UTC()
	if len(fields) > 1 {
		p.When = p.When.In(parseZone(fields[1]))
	}
	return p
}

// parseZone reads an offset such as +0130; one that no clock can have is UTC.
func parseZone(text string) *time.Location {
	n, err := strconv.Atoi(text)
	if err != nil || n <= -2400 || n >= 2400 {
		return time.UTC
	}
	return time.FixedZone("", (n/100*60+n%100)*60)
}
