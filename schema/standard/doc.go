// Package standard holds the published figures that a record is judged by: the
// lengths, losses, reaches, fire listings, classes and distances of the cabling
// standards and codes, and the formulas between them.
//
// Every figure comes with a Source: body, edition, clause, and how sure it is. A
// figure known from memory alone, or on which sources disagree, says so, and a
// verdict that rests on it is an observation. The two families of standards,
// ANSI/TIA and ISO/IEC, differ on purpose and are never mixed: a function that
// depends on the family takes a Regime, and has no answer where that family has none.
//
// The package is pure: same input, same answer; it knows no records and reads no
// files. Lengths and temperatures stay exact integers; floats stand in formulas
// for losses, delays and resistances only. It holds facts and figures, never the
// wording of a standard, and its answers are no substitute for the printed document.
package standard
