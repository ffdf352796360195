// Package sheet lays labels out on sheets and draws them as SVG and PDF.
//
// Lay does the work: it places every label and port strip on pages of texts,
// codes and lines with exact positions. The two renderers only write down what
// is on a page, so that both show the same. Letters come from a typeface that is
// built in; what it has no letter for is shown as its code point, said in
// the cautions and never left out. An identifier that is long is set smaller, then
// on several lines; the code on a label holds the identifier itself.
//
// The package may assume nothing about identifiers: they may hold anything. It
// reads no files and no clock, and the same labels give the same bytes.
package sheet
