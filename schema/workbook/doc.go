// Package workbook writes rows of cells as a spreadsheet. It is the only room that
// knows the formats of spreadsheets, and knows nothing of records.
package workbook
