// Package table lays records out in rows: a table for each kind of record, a
// column for each of its fields, a row for each record. People who live in
// spreadsheets read and fill such tables; the columns come from the record
// language, so a field that is added there is a column here.
//
// Of lays records out, Claims reads what rows state, and Enter brings that into the
// texts of a plant's files.
//
// The package reads no files and knows no format of spreadsheets: it is handed
// records, texts and rows.
package table
