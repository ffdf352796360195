// Package weave joins the changes that two people made to one file of records:
// record by record and field by field, never line by line.
//
// It takes three texts (what both started from and what each made of it) and
// gives one. The text of one side is kept where it can be, with its comments
// and its layout, and the other side's changes are set into it at the byte, with
// their comments. Where both changed the same field of the same record to
// different values, or one took out what the other changed, both stand in the
// result between the markers that git too leaves around a conflict.
//
// The result is read again before it is given: unless it states exactly the
// records that were joined, there is none. A text that can not be cut into
// records is unfit, and the caller merges it as any other text.
//
// The package opens no files and runs no git. It knows the record language only
// to tell whether two values are the same, so records of kinds and fields that
// it has never heard of are joined too.
package weave
