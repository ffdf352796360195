// Package block turns the text of a record file into literal blocks: a kind,
// labels, fields whose values are texts, numbers, yes-or-no words or lists of
// texts, and blocks inside blocks, each with its exact byte range.
//
// Split cuts a file into its top-level blocks; Parse reads one of them. What
// Parse returns depends on the text it is given and on nothing else, so callers
// may remember it by that text. Both go on after a mistake: it becomes a
// Problem, and everything around it is still read.
//
// The text is untrusted. Size and nesting are bounded, time and memory grow in
// step with the size of the text, and no text whatever makes the package panic.
//
// The package knows the syntax and no record kinds, opens no files and
// evaluates nothing: an expression is a mistake, not a value.
package block
