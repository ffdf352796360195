// Package render writes orders and histories: as text for people, at the width
// of a page, and as JSON for programs.
//
// It decides nothing. What is in which class, in which order and why stands in
// the values that it is handed; it chooses words and places. The text of an
// order is a document for the site: it is printed, taken along, ticked off and
// signed. Nothing that a record holds reaches a terminal unescaped.
package render
