// Package schema is the record language: which kinds of record a plant is made
// of, which fields each has, and how the text of a file becomes records.
//
// One table (kinds.go) defines every kind. Decoding, units, references, the
// language page, the names in a work order and what a change of a field means
// on site all read that table; adding a field is adding one line there.
//
// A Record is immutable and knows its place only relative to its own block of
// text, so the same block read in another commit, or further down the file, is
// the same Record. A File puts records in their place. What is wrong with a
// record is a Problem with an exact place; it never stops the reading of others.
//
// The package does not know how records refer to each other: that is the plant
// (schema/plant). It reads no files and runs no git: it is handed text.
package schema
