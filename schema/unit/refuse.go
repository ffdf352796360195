package unit

import (
	"fmt"
	"strings"
	"unicode/utf8"
)

// Error is a text that is no quantity of the kind asked for. It is the user's
// mistake, never the environment's.
type Error struct {
	Text    string // what was read, unchanged
	Message string // what is wrong with it: a plain lower-case sentence
	Next    string // what to write instead; empty where no hint can be given
}

// Error returns the message and, where there is one, what to write instead.
func (e *Error) Error() string {
	if e.Next == "" {
		return e.Message
	}
	return e.Message + ": " + e.Next
}

// refuse builds an Error; next is a list of texts to offer in place of the one read.
func refuse(text, message string, next ...string) *Error {
	return &Error{Text: text, Message: message, Next: offer(next)}
}

// offer words a list of replacements: write "a", "b" or "c".
func offer(texts []string) string {
	if len(texts) == 0 {
		return ""
	}
	var b strings.Builder
	b.WriteString("write ")
	for i, t := range texts {
		switch {
		case i > 0 && i == len(texts)-1:
			b.WriteString(" or ")
		case i > 0:
			b.WriteString(", ")
		}
		fmt.Fprintf(&b, "%q", t)
	}
	return b.String()
}

// shown quotes a part of the text for a message, cut short so that a message
// stays one line whatever was in the file.
func shown(s string) string {
	const most = 24
	if utf8.RuneCountInString(s) <= most {
		return fmt.Sprintf("%q", s)
	}
	return fmt.Sprintf("%q...", string([]rune(s)[:most]))
}
