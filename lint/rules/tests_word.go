package rules

import (
	"strings"

	"homerun/schema"
	"homerun/schema/plant"
	"homerun/schema/standard"
)

// Testers name their limits each in its own way. What is read of the name are
// the words that every one of them has: the body, the category or class, the
// kind of fibre, the series.

// A testLimit is what the name of a tester's limit says.
type testLimit struct {
	regime                standard.Regime
	medium                plant.Medium
	category              standard.Category
	class                 string
	multimode, singleMode bool
	series                string
	// wholeLink is set where it is the limit of a link or channel.
	wholeLink bool
	text      string
}

// longestLimit bounds how much of a limit's name is read.
const longestLimit = 200

// readLimit reads the name of a limit.
func readLimit(text string) testLimit {
	limit := testLimit{text: text}
	words := strings.FieldsFunc(strings.ToLower(text[:min(len(text), longestLimit)]), func(c rune) bool {
		return (c < 'a' || c > 'z') && (c < '0' || c > '9') && c != '.' && c != '-'
	})
	for i, w := range words {
		next := ""
		if i+1 < len(words) {
			next = words[i+1]
		}
		limit.read(w, next)
	}
	return limit
}

// read takes one word, with the next where it needs that.
func (l *testLimit) read(word, next string) {
	number, isCategory := strings.CutPrefix(word, "cat")
	switch {
	case word == "tia" || strings.HasPrefix(word, "tia-"):
		l.regime = standard.TIA
	case word == "iso" || word == "en":
		l.regime = standard.ISO
	case word == "link" || word == "channel":
		l.wholeLink = true
	case word == "category" || word == "cat" || word == "cat.":
		l.take(categoryIn(next))
	case isCategory && number != "":
		l.take(categoryIn(strings.TrimPrefix(number, ".")))
	case word == "class":
		if c := categoryOfClass(next); c != 0 {
			l.take(c)
			l.class = c.Class()
		}
	case word == "coaxial" || word == "coax":
		l.medium = plant.Coax
	case word == "series":
		l.medium, l.series = plant.Coax, next
	default:
		l.fibre(word)
	}
}

func (l *testLimit) take(c standard.Category) {
	if c != 0 {
		l.medium, l.category = plant.TwistedPair, c
	}
}

// fibre takes a word about fibre.
func (l *testLimit) fibre(word string) {
	class := fibreIn(word)
	switch {
	case word == "multimode" || word == "multi-mode" || class.Multimode():
		l.medium, l.multimode = plant.Fibre, true
	case word == "single-mode" || word == "singlemode" || class.SingleMode():
		l.medium, l.singleMode = plant.Fibre, true
	case word == "fibre" || word == "fiber":
		l.medium = plant.Fibre
	}
}

// fibreIn finds a class of fibre by its word in whatever case; zero for none.
func fibreIn(word string) standard.Fibre {
	for _, f := range standard.Fibres() {
		if strings.EqualFold(f.String(), word) {
			return f
		}
	}
	return 0
}

// categoryIn finds a category by its word in whatever case; zero for none.
func categoryIn(word string) standard.Category {
	for _, c := range standard.Categories() {
		if strings.EqualFold(c.String(), word) {
			return c
		}
	}
	return 0
}

// categoryOfClass is the highest category that makes up a class of ISO/IEC
// 11801-1; zero for none.
func categoryOfClass(word string) standard.Category {
	var found standard.Category
	for _, c := range standard.Categories() {
		if class := c.Class(); class != "" && strings.EqualFold(class, word) {
			found = c
		}
	}
	return found
}

// shown is what was read of the limit, in words.
func (l *testLimit) shown() string {
	switch {
	case l.class != "":
		return "class " + l.class
	case l.category != 0:
		return "category " + l.category.String()
	case l.series != "":
		return "coaxial series " + schema.Printable(l.series)
	case l.multimode:
		return "multimode fibre"
	case l.singleMode:
		return "single-mode fibre"
	case l.medium == plant.Fibre:
		return "fibre"
	case l.medium == plant.Coax:
		return "coaxial cable"
	}
	return schema.Quote(l.text)
}
