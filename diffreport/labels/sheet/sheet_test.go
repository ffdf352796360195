package sheet_test

import (
	"bytes"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"homerun/diffreport/labels"
	"homerun/diffreport/labels/sheet"
	"homerun/schema/unit"
)

const mm = unit.Millimetre

// measured is the width of a text by the font package's own reading of the

// typeface.

// TestAnIdentifierIsNeverCutNorOutsideItsLabel sets any text on any label.

// TestCodesAreOfTheSmallestVersion holds the number of modules against the

// capacities of ISO/IEC 18004:2015, table 7, level M, from memory: version 1

// (21 modules) holds 20 letters of its alphabet or 14 bytes, version 2 (25

// modules) 38 or 26.

// TestLabelsLieOnTheirSheetSideBySide checks that cut lines of different labels

// never overlap and that every sheet but the last is full.

func TestLabelsLieOnTheirSheetSideBySide(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		o := sheet.Defaults(unit.Metric)
		o.Label = sheet.Size{W: unit.Length(rapid.IntRange(8, 190).Draw(t, "w")) * mm, H: unit.Length(rapid.IntRange(5, 270).Draw(t, "h")) * mm}
		o.Gap = sheet.Size{W: unit.Length(rapid.IntRange(0, 9).Draw(t, "gap")) * mm, H: unit.Length(rapid.IntRange(0, 9).Draw(t, "gap")) * mm}
		var set labels.Set
		for range rapid.IntRange(1, 200).Draw(t, "labels") {
			set.Labels = append(set.Labels, labels.Label{ID: "1A"})
		}
		across := int((190*mm + o.Gap.W) / (o.Label.W + o.Gap.W))
		down := int((273*mm + o.Gap.H) / (o.Label.H + o.Gap.H))
		o.Used = rapid.IntRange(0, across*down-1).Draw(t, "used")
		doc, err := sheet.Lay([]labels.Set{set}, o)
		if err != nil {
			t.Fatal(err)
		}
		if want := (len(set.Labels) + o.Used + across*down - 1) / (across * down); len(doc.Pages) != want {
			t.Fatalf("%d sheets, want %d", len(doc.Pages), want)
		}
		n := 0
		for _, page := range doc.Pages {
			seen := make(map[sheet.Line]bool)
			for i := 0; i < len(page.Lines); i += 4 {
				top := page.Lines[i]
				if seen[top] || top.X1 < 10*mm || top.X2 > 200*mm || top.Y1 < 12*mm || top.Y1+o.Label.H > 285*mm ||
					(top.X1-10*mm)%(o.Label.W+o.Gap.W) != 0 || (top.Y1-12*mm)%(o.Label.H+o.Gap.H) != 0 {
					t.Fatalf("a label lies at %v", top)
				}
				seen[top] = true
				n++
			}
		}
		if n != len(set.Labels) || doc.Labels != n {
			t.Fatalf("%d labels are drawn, %d counted, %d wanted", n, doc.Labels, len(set.Labels))
		}
	})
}

// TestEveryPortIsOnAStrip cuts strips of any length.

func TestEveryPortIsOnAStrip(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		o := sheet.Defaults(unit.Metric)
		o.Port.W = unit.Length(rapid.IntRange(8, 190).Draw(t, "w")) * mm
		var set labels.Set
		var want []string
		for _, n := range rapid.SliceOfN(rapid.IntRange(1, 60), 1, 12).Draw(t, "ports") {
			strip := labels.Strip{Holder: "1A-" + string(rune('A'+len(set.Strips)))}
			for p := range n {
				strip.Ports = append(strip.Ports, strip.Holder+":"+string(rune('0'+(p+1)/10))+string(rune('0'+(p+1)%10)))
			}
			want = append(want, strip.Ports...)
			set.Strips = append(set.Strips, strip)
		}
		doc, err := sheet.Lay([]labels.Set{set}, o)
		if err != nil {
			t.Fatal(err)
		}
		var got []string
		for _, page := range doc.Pages {
			for _, text := range page.Texts {
				if text.Tone == sheet.Plain {
					got = append(got, text.Words)
				}
			}
			for _, line := range page.Lines {
				if line.Y2 > 285*mm || line.X2 > 200*mm {
					t.Fatalf("a port reaches to %d, %d", line.X2, line.Y2)
				}
			}
		}
		if strings.Join(got, "") != strings.Join(want, "") {
			t.Fatalf("wanted %v, got %v", want, got)
		}
	})
}

func TestTheSameLabelsAreTheSameBytes(t *testing.T) {
	t.Parallel()
	first := lay(t, sheet.Defaults(unit.Metric), oddSet())
	for range 5 {
		again := lay(t, sheet.Defaults(unit.Metric), oddSet())
		if !bytes.Equal(pdf(t, first), pdf(t, again)) {
			t.Fatal("the PDF differs")
		}
		for i := range first.Pages {
			if !bytes.Equal(svg(t, first, i), svg(t, again, i)) {
				t.Fatalf("picture %d differs", i)
			}
		}
	}
}

func TestPlantsHaveSheetsOfTheirOwn(t *testing.T) {
	t.Parallel()
	o := sheet.Defaults(unit.Metric)
	o.Used = 40
	set := oddSet()
	set.Strips = nil
	doc := lay(t, o, set, labels.Set{Plant: "toad-hall"}, labels.Set{Plant: "rat-bank", Order: "WO-1-2", Labels: set.Labels[:1]})
	if len(doc.Pages) != 3 || len(doc.Pages[2].Codes) != 1 || doc.Pages[2].Codes[0].X > 30*mm {
		t.Fatalf("%d sheets", len(doc.Pages))
	}
	if want := "labels of rat-bank for WO-1-2, sheet 1 of 1. "; !slices.ContainsFunc(doc.Pages[2].Texts, func(x sheet.Text) bool { return strings.HasPrefix(x.Words, want) }) {
		t.Errorf("no sheet says %q: %v", want, doc.Pages[2].Texts)
	}
}

// harmless reads a picture as XML and allows only what the renderer draws.
