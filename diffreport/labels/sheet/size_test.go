package sheet_test

import (
	"strings"
	"testing"

	"pgregory.net/rapid"

	"homerun/diffreport/labels"
	"homerun/diffreport/labels/sheet"
	"homerun/schema/unit"
)

func TestSizes(t *testing.T) {
	t.Parallel()
	for text, want := range map[string]sheet.Size{
		"A4":           {W: 210 * mm, H: 297 * mm}, // ISO 216
		"a5":           {W: 148 * mm, H: 210 * mm}, // ISO 216
		"Letter":       {W: 2159 * mm / 10, H: 2794 * mm / 10},
		"50x20":        {W: 50 * mm, H: 20 * mm},
		"50 x 20 mm":   {W: 50 * mm, H: 20 * mm},
		"50×20":        {W: 50 * mm, H: 20 * mm},
		"2x0.75in":     {W: 508 * mm / 10, H: 1905 * mm / 100},
		"2inx20mm":     {W: 508 * mm / 10, H: 20 * mm},
		"3":            {W: 3 * mm, H: 3 * mm},
		"0":            {},
		"0.25in":       {W: 635 * mm / 100, H: 635 * mm / 100},
		"62.5x100.125": {W: 625 * mm / 10, H: 100125 * unit.Micrometre},
	} {
		if got, err := sheet.ParseSize(text); err != nil || got != want {
			t.Errorf("%q is %v, want %v (%v)", text, got, want, err)
		}
	}
	for _, text := range []string{"", "x", "50x", "x20", "-5x20", "50x20x30", "fifty", "50x20 stone", "1e9x5", "3000x10", "..x5"} {
		if got, err := sheet.ParseSize(text); err == nil {
			t.Errorf("%q is read as %v", text, got)
		}
	}
}

func TestASizeIsReadAsItIsPrinted(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		um := rapid.Int64Range(0, 2_000_000)
		size := sheet.Size{W: unit.Length(um.Draw(t, "w")) * unit.Micrometre, H: unit.Length(um.Draw(t, "h")) * unit.Micrometre}
		if got, err := sheet.ParseSize(size.String()); err != nil || got != size {
			t.Fatalf("%v is read as %v (%v)", size, got, err)
		}
	})
}

func TestMeasuresThatDoNotGoTogether(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		want string
		edit func(*sheet.Options)
	}{
		{"does not fit on a sheet of A4", func(o *sheet.Options) { o.Label.W = 300 * mm }},
		{"with a margin of", func(o *sheet.Options) { o.Margin.H = 148 * mm }},
		{"has no room for a code", func(o *sheet.Options) { o.Label.H = 2 * mm }},
		{"a port of", func(o *sheet.Options) { o.Port.W = 2 * mm }},
		{"a sheet holds 44", func(o *sheet.Options) { o.Used = 44 }},
		{"-1 labels", func(o *sheet.Options) { o.Used = -1 }},
	} {
		o := sheet.Defaults(unit.Metric)
		c.edit(&o)
		if _, err := sheet.Lay(nil, o); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("got %v, want %q", err, c.want)
		}
	}
}

func TestAPortThatDoesNotFitIsRefusedWhereOneIsNeeded(t *testing.T) {
	t.Parallel()
	o := sheet.Defaults(unit.Metric)
	o.Margin, o.Gap = sheet.Size{}, sheet.Size{}
	o.Sheet, o.Label = sheet.Size{W: 30 * mm, H: 12 * mm}, sheet.Size{W: 30 * mm, H: 12 * mm}
	set := labels.Set{Labels: []labels.Label{{ID: "1A"}}}
	if _, err := sheet.Lay([]labels.Set{set}, o); err != nil {
		t.Errorf("no port is needed: %v", err)
	}
	set.Strips = []labels.Strip{{Holder: "1A-A", Ports: []string{"1A-A:1", "1A-A:2"}}}
	if _, err := sheet.Lay([]labels.Set{set}, o); err == nil || !strings.Contains(err.Error(), "a port of 15x14 mm") {
		t.Errorf("got %v", err)
	}
	o.Port.H = 12 * mm
	if doc := lay(t, o, set); len(doc.Pages) != 2 || len(doc.Pages[1].Codes) != 2 {
		t.Errorf("%d sheets", len(doc.Pages))
	}
}
