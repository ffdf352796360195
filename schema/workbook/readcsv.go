package workbook

import (
	"bytes"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"strings"
	"unicode/utf8"

	"golang.org/x/text/encoding/unicode"
)

// readCSV reads separated values by RFC 4180, with whatever separator the first line
// has most of.
func readCSV(data []byte) ([]Grid, error) {
	text, err := decoded(data)
	if err != nil {
		return nil, err
	}
	in := csv.NewReader(bytes.NewReader(text))
	in.Comma, in.FieldsPerRecord = separator(text), -1
	var g Grid
	var cells tally
	for {
		fields, err := in.Read()
		if errors.Is(err, io.EOF) {
			return []Grid{g}, nil
		}
		if bad, is := errors.AsType[*csv.ParseError](err); is {
			return nil, fmt.Errorf("line %d, column %d: %w: %w", bad.Line, bad.Column, ErrNoTable, bad.Err)
		}
		if err != nil {
			return nil, fmt.Errorf("%w: %w", ErrNoTable, err)
		}
		row := make([]Cell, len(fields))
		for i, field := range fields {
			line, _ := in.FieldPos(i)
			row[i] = Cell{Text: strings.TrimSpace(Bare(field)), Place: fmt.Sprintf("line %d, field %d", line, i+1)}
		}
		if err := cells.take(&g, row); err != nil {
			return nil, err
		}
	}
}

// decoded is the text in UTF-8 without a byte order mark.
func decoded(data []byte) ([]byte, error) {
	if bytes.HasPrefix(data, []byte("\xff\xfe")) || bytes.HasPrefix(data, []byte("\xfe\xff")) {
		text, err := unicode.UTF16(unicode.LittleEndian, unicode.ExpectBOM).NewDecoder().Bytes(data)
		if err != nil {
			return nil, fmt.Errorf("%w: %w", ErrNoTable, err)
		}
		return text, nil
	}
	data = bytes.TrimPrefix(data, []byte(mark))
	if !utf8.Valid(data) {
		at := 0
		for at < len(data) {
			r, size := utf8.DecodeRune(data[at:])
			if r == utf8.RuneError && size == 1 {
				break
			}
			at += size
		}
		line := 1 + bytes.Count(data[:at], []byte("\n"))
		return nil, fmt.Errorf("line %d: %w: byte 0x%02X is not UTF-8 text; save it as UTF-8, or as .xlsx", line, ErrNoTable, data[at])
	}
	if at := bytes.IndexByte(data, 0); at >= 0 {
		return nil, fmt.Errorf("line %d: %w: it holds a NUL byte", 1+bytes.Count(data[:at], []byte("\n")), ErrNoTable)
	}
	return data, nil
}

// separator is the sign that stands most often in the first line that is not empty,
// outside of quotes; a comma where none does.
func separator(text []byte) rune {
	first := text
	for line := range bytes.Lines(text) {
		if len(bytes.TrimSpace(line)) > 0 {
			first = line
			break
		}
	}
	counts := make(map[byte]int)
	quoted := false
	for _, c := range first {
		if c == '"' {
			quoted = !quoted
		}
		if !quoted {
			counts[c]++
		}
	}
	best := byte(',')
	for _, c := range []byte(";\t") {
		if counts[c] > counts[best] {
			best = c
		}
	}
	return rune(best)
}
