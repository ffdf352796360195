package block

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
	"unicode/utf8"
)

// Limits on what is read. They are far above anything a plant needs, and low
// enough that a hostile file costs no more than its size.
const (
	// MaxFile is the size in bytes of the largest file that is read.
	MaxFile = 16 << 20
	// MaxBlock is the size in bytes of the largest top-level block whose body
	// is read.
	MaxBlock = 4 << 20
	// MaxOdd is how many bytes of one block, outside the blocks in it and the
	// plain records, are read. Beyond, only its kind and label are.
	MaxOdd = 256 << 10
	// MaxText is the size in bytes of the longest quoted text, as written.
	MaxText = 64 << 10
	// MaxSigns is how many $ and % signs one quoted text may hold.
	MaxSigns = 32
	// MaxNumber is the size in bytes of the longest number, as written.
	MaxNumber = 64
	// MaxDepth is how deep brackets of any kind may stand inside one another.
	MaxDepth = 32
	// MaxProblems is how many problems one call of Split or Parse returns; the
	// last then says how many more there are.
	MaxProblems = 100
)

// Code names the sort of a Problem, for callers that treat sorts differently.
type Code uint8

// The sorts of problem. The zero Code is none.
const (
	// Unreadable is a mistake of syntax.
	Unreadable Code = iota + 1
	// Unclosed is a block, list, text or comment without its end.
	Unclosed
	// MergeMarkers is a merge conflict that nobody resolved.
	MergeMarkers
	// NotLiteral is an expression, a template, a heredoc or null where a
	// literal value is meant.
	NotLiteral
	// Duplicate is a field that is written twice in one block.
	Duplicate
	// StrayField is a field outside any block.
	StrayField
	// UnquotedLabel is a label without quotes.
	UnquotedLabel
	// NotUTF8 is a byte that does not belong to UTF-8 text.
	NotUTF8
	// ControlCharacter is an invisible character other than space, tab and the
	// ends of lines.
	ControlCharacter
	// TooDeep is nesting beyond MaxDepth.
	TooDeep
	// TooLarge is a file, block, text or number beyond its limit.
	TooLarge
)

// Problem is one mistake in the text.
type Problem struct {
	Code Code
	At   Range
	// Message says what is wrong, Next what to do about it.
	Message, Next string
	// Also is a second place that belongs to the mistake, such as the field
	// that a duplicate repeats; zero when there is none.
	Also Range
}

// ranked is a problem and how much it is to be believed: of several on one
// line, only those of the lowest rank are the mistake, the others follow from it.
type ranked struct {
	Problem
	rank int
}

// The ranks of a problem: found by our own reading of the characters, by the
// parser, or in the values that the parser found.
const (
	byText = iota
	byParser
	byValue
)

// settle orders problems by place, keeps the first of the lowest rank on each
// line of the text, and caps their number.
func settle(src string, found []ranked) []Problem {
	if len(found) == 0 {
		return nil
	}
	slices.SortStableFunc(found, func(a, b ranked) int { return cmp.Compare(a.At.Start, b.At.Start) })
	kept := make([]Problem, 0, min(len(found), MaxProblems+1))
	best := 0
	for i := 1; i <= len(found); i++ {
		if i < len(found) && !strings.Contains(src[found[i-1].At.Start:found[i].At.Start], "\n") {
			if found[i].rank < found[best].rank {
				best = i
			}
			continue
		}
		kept = append(kept, found[best].Problem)
		best = i
	}
	return capped(kept)
}

// capped cuts a list of problems to MaxProblems and lets the last one say how
// many are left out.
func capped(all []Problem) []Problem {
	if len(all) <= MaxProblems {
		return all
	}
	rest := len(all) - MaxProblems + 1
	last := all[MaxProblems-1]
	last.Message = fmt.Sprintf("%s, and %d more problems follow", last.Message, rest-1)
	all = all[:MaxProblems:MaxProblems]
	all[MaxProblems-1] = last
	return all
}

// shown is a part of the text as it may stand in a message: short, and without
// anything that a terminal would obey.
func shown(written string) string {
	const most = 60
	written = strings.Map(func(r rune) rune {
		if isControl(r) || r == '\n' || r == '\r' || r == '\t' {
			return ' '
		}
		return r
	}, strings.ToValidUTF8(written[:min(len(written), 4*most+utf8.UTFMax)], "\ufffd"))
	if runes := []rune(written); len(runes) > most {
		return string(runes[:most]) + "..."
	}
	return written
}
