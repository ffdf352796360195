package unit

import (
	"strings"

	"github.com/agext/levenshtein"
)

// scale is one unit of a kind of quantity: x of it are x*per + offset of the
// integer that is kept.
type scale struct {
	word   string
	per    int64
	offset int64
}

// kind is all that the parser and the printer know of a kind of quantity.
type kind struct {
	noun     string            // in messages: "length"
	scales   []scale           // units that are read, the two to offer first
	names    map[string]string // other spellings, in lower case, and the unit they mean
	example  string            // offered where the text holds no number
	smallest string            // what the integer counts, in words
	floor    int64             // the least integer that has a meaning; 0: no floor
}

// read parses one quantity: [sign] digits [. digits] [space] unit.
func (k *kind) read(text string) (int64, *Error) {
	if err := k.prepare(text); err != nil {
		return 0, err
	}
	num, rest, ok := scan(text)
	if !ok {
		return 0, k.noNumber(text)
	}
	word := strings.TrimPrefix(rest, " ")
	s, ok := k.scale(word)
	if !ok {
		return 0, k.badUnit(text, num, rest)
	}
	return k.value(text, num, s)
}

// prepare refuses a text before it is looked at closely.
func (k *kind) prepare(text string) *Error {
	switch {
	case text == "":
		return k.refuse(text, "is empty", k.example)
	case len(text) > maxText:
		return k.refuse(text, shown(text)+" is too long to be one", k.example)
	case strings.TrimSpace(text) != text:
		return k.refuse(text, "has blanks around it", strings.TrimSpace(text))
	}
	return nil
}

// value turns the number into the integer kept.
func (k *kind) value(text, num string, s scale) (int64, *Error) {
	n, ok := decimal(num)
	if !ok {
		return 0, k.refuse(text, shown(num)+" has more digits than can be kept exactly")
	}
	v, exact, fits := n.times(s.per)
	if !exact {
		return 0, k.refuse(text, shown(text)+" is finer than "+k.smallest+", the smallest step kept")
	}
	v, sums := add(v, s.offset)
	switch {
	case !fits || !sums:
		return 0, k.refuse(text, shown(text)+" is larger than can be kept")
	case k.floor != 0 && v < k.floor:
		return 0, k.refuse(text, shown(text)+" is lower than there is", k.example)
	}
	return v, nil
}

// refuse builds an Error about a quantity of this kind and offers, of the texts to
// write instead, those that would be read.
func (k *kind) refuse(text, message string, next ...string) *Error {
	good := next[:0]
	for _, t := range next {
		if k.accepts(t) {
			good = append(good, t)
		}
	}
	return refuse(text, k.noun+" "+message, good...)
}

// accepts reports whether read would take the text.
func (k *kind) accepts(text string) bool {
	num, rest, ok := scan(text)
	if !ok || len(text) > maxText {
		return false
	}
	s, ok := k.scale(strings.TrimPrefix(rest, " "))
	if !ok {
		return false
	}
	_, err := k.value(text, num, s)
	return err == nil
}

// scale finds the unit by its exact word.
func (k *kind) scale(word string) (scale, bool) {
	for _, s := range k.scales {
		if s.word == word {
			return s, true
		}
	}
	return scale{}, false
}

// meant finds the unit that a misspelt word stands for.
func (k *kind) meant(word string) (string, bool) {
	low := strings.ToLower(strings.Trim(word, " .\u00a0\u2009\u202f"))
	for _, s := range k.scales {
		if strings.ToLower(s.word) == low {
			return s.word, true
		}
	}
	if w, ok := k.names[low]; ok {
		return w, true
	}
	return k.nearest(low)
}

// nearest finds the one long name within one slip of the word. Short words are all
// within one slip of each other, so they are left alone.
func (k *kind) nearest(low string) (string, bool) {
	found := ""
	for name, w := range k.names {
		if len(name) < 4 || len(low) < 4 || levenshtein.Distance(name, low, nil) > 1 {
			continue
		}
		if found != "" && found != w {
			return "", false
		}
		found = w
	}
	return found, found != ""
}
