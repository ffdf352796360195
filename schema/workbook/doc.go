// Package workbook writes and reads rows of cells: spreadsheets (.xlsx) and
// separated values. It is the only room that knows their formats, and knows nothing
// of records.
//
// What is read is untrusted: sizes are bounded, no formula is worked out, no link is
// followed, and no bytes whatever make the package panic.
package workbook
