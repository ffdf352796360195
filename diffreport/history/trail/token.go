package trail

import (
	"bytes"
	"strings"

	"golang.org/x/text/unicode/norm"
)

// A token stands for a text in quotes. Different texts may share one, so a token
// says where to look and never that something is there.
type token uint32

// The sorts of token of one text: that it stands in quotes, and that it does so
// before a brace on its line, as a label does where its record begins.
const (
	mention token = 1 << 31
	defines token = 0
)

// odd is the token of text that can spell a label in a way that tokens do not
// see. Versions with it are always looked at.
const odd token = 1

// tokenOf is the token of a label or of a port on it, which is that of the label.
// A label may itself end like a port, so everything that does is left out.
func tokenOf(label []byte) token {
	for cut := bytes.LastIndexByte(label, ':'); cut > 0 && digits(label[cut+1:]); cut = bytes.LastIndexByte(label, ':') {
		label = label[:cut]
	}
	// FNV-1a by the paper of Fowler, Noll and Vo, 64 bits.
	h := uint64(14695981039346656037)
	for _, b := range label {
		h = (h ^ uint64(b)) * 1099511628211
	}
	return token(h^h>>32|2) &^ mention
}

// digits says whether a text is a port's number or a row of ports.
func digits(text []byte) bool {
	for _, b := range text {
		if (b < '0' || b > '9') && b != '-' {
			return false
		}
	}
	return len(text) > 0
}

// tokens hands every token of a text of whole lines to take, some more than
// once. What stands between two quotes is taken whether it is text or what
// divides texts, so that quotes in comments hide nothing.
func tokens(text []byte, take func(token)) {
	for len(text) > 0 {
		next := bytes.IndexByte(text, '"')
		if next < 0 {
			bare(text, take)
			return
		}
		start := bytes.LastIndexByte(text[:next], '\n') + 1
		bare(text[:start], take)
		end := len(text)
		if stop := bytes.IndexByte(text[next:], '\n'); stop >= 0 {
			end = next + stop
		}
		line(text[start:end], next-start, take)
		text = text[end:]
	}
}

// line takes a line by its quotes, of which the first is known.
func line(text []byte, quote int, take func(token)) {
	brace := bytes.LastIndexByte(text, '{')
	plain := bytes.IndexByte(text, '\\') < 0
	if !plain && (bytes.Contains(text, []byte(`\u`)) || bytes.Contains(text, []byte(`\U`))) {
		take(odd)
	}
	if brace >= 0 {
		words(text[:quote], take)
		remarks(text, take)
	}
	for {
		length := bytes.IndexByte(text[quote+1:], '"')
		if length < 0 {
			return
		}
		if length > 0 {
			inner := text[quote+1 : quote+1+length]
			if !ascii(inner) {
				inner = norm.NFC.Bytes(inner)
			}
			t := tokenOf(inner)
			take(t | mention)
			if brace > quote {
				take(t | defines)
			}
		}
		quote += 1 + length
	}
}

// bare takes lines without quotes, where a label may stand as a bare word.
func bare(text []byte, take func(token)) {
	for {
		brace := bytes.IndexByte(text, '{')
		if brace < 0 {
			return
		}
		start := bytes.LastIndexByte(text[:brace], '\n') + 1
		words(text[start:brace], take)
		remarks(text[start:brace], take)
		text = text[brace+1:]
	}
}

// remarks takes a line that opens a block for an odd one where a comment may
// stand between its words.
func remarks(text []byte, take func(token)) {
	if bytes.Contains(text, []byte("/*")) || bytes.Contains(text, []byte("*/")) {
		take(odd)
	}
}

// words takes the words behind the first of a line that opens a block.
func words(text []byte, take func(token)) {
	fields := bytes.Fields(text)
	for i, f := range fields {
		if i > 0 {
			t := tokenOf(norm.NFC.Bytes(f))
			take(t | mention)
			take(t | defines)
		}
	}
}

func ascii[T string | []byte](text T) bool {
	// Eight at a time: whole histories go through here.
	for ; len(text) >= 8; text = text[8:] {
		if (text[0]|text[1]|text[2]|text[3]|text[4]|text[5]|text[6]|text[7])&0x80 != 0 {
			return false
		}
	}
	for i := range len(text) {
		if text[i] >= 0x80 {
			return false
		}
	}
	return true
}

// spelled says whether a label always stands in the text as it is read: nothing
// in it is written with an escape.
func spelled(label string) bool {
	return label != "" && !strings.ContainsAny(label, "\"\\\n\r\t\x00") && !strings.Contains(label, "${") && !strings.Contains(label, "%{")
}
