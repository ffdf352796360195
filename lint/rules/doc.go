// Package rules holds the rules that a plant is held against: one file or a few
// for each family, one slice of all of them in rules.go, and one page for each
// rule in pages, which explain, the documents and the tests read.
//
// A rule reads the plant and the published figures and reports findings; it
// changes nothing and knows no other rule. It may assume that whatever it finds
// resolved in the plant is what the records say, and must stay silent where a
// value is not stated or could not be read: no verdict rests on a zero.
//
// A verdict that rests on a figure known from memory alone is an observation.
// None of this takes the place of the printed standard, of the local code, or of
// the person who is licensed to do the work.
package rules
