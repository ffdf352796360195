package sheet_test

import (
	"strings"
	"testing"

	"golang.org/x/image/font"
	"golang.org/x/image/font/gofont/gobold"
	"golang.org/x/image/font/opentype"
	"golang.org/x/image/math/fixed"
	"pgregory.net/rapid"

	"homerun/diffreport/labels"
	"homerun/diffreport/labels/sheet"
	"homerun/schema"
	"homerun/schema/unit"
)

func measured(t interface{ Fatal(...any) }, words string, size unit.Length) unit.Length {
	parsed, err := opentype.Parse(gobold.TTF)
	if err != nil {
		t.Fatal(err)
	}
	// One point a pixel and a thousand of them an em.
	face, err := opentype.NewFace(parsed, &opentype.FaceOptions{Size: 1000, DPI: 72, Hinting: font.HintingNone})
	if err != nil {
		t.Fatal(err)
	}
	var wide fixed.Int26_6
	for _, r := range words {
		advance, _ := face.GlyphAdvance(r)
		wide += advance
	}
	return unit.Length(int64(wide) * int64(size) / 64 / 1000)
}

var anyText = rapid.OneOf(
	rapid.StringMatching(`[0-9]{1,2}[A-C]-[A-F][0-9]{2}`), rapid.StringN(1, 40, 128), rapid.SampledFrom(odd), rapid.StringMatching(`[W-Z/.:-]{1,128}`),
	rapid.Map(rapid.SliceOfN(rapid.Byte(), 1, 128), func(b []byte) string { return string(b) }),
)

func TestAnIdentifierIsNeverCutNorOutsideItsLabel(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		o := sheet.Defaults(unit.Metric)
		o.Label = sheet.Size{W: unit.Length(rapid.IntRange(8, 190).Draw(t, "w")) * mm, H: unit.Length(rapid.IntRange(5, 270).Draw(t, "h")) * mm}
		id := anyText.Draw(t, "id")
		doc, err := sheet.Lay([]labels.Set{{Plant: "p", Labels: []labels.Label{{ID: id, Kind: "splice closure", Space: id, At: id}}}}, o)
		if err != nil {
			t.Fatal(err)
		}
		page, words := doc.Pages[0], ""
		for _, text := range page.Texts {
			if text.Tone != sheet.Strong {
				continue
			}
			words += text.Words
			right, crowded := text.X+measured(t, text.Words, text.Size), text.Size < mm/2
			if text.X < o.Margin.W || right > o.Margin.W+o.Label.W || text.Y > o.Margin.H+o.Label.H && !crowded {
				t.Fatalf("%q of %d nm reaches from %d to %d, its label from %d to %d", text.Words, text.Size, text.X, right, o.Margin.W, o.Margin.W+o.Label.W)
			}
			if text.Size < 2*mm && len(doc.Cautions) == 0 {
				t.Fatalf("nothing is said of type of %d nm", text.Size)
			}
		}
		if plain := schema.Printable(id); words != plain && (words == "" || strings.IndexFunc(plain, func(r rune) bool { return r > '~' }) < 0) {
			t.Fatalf("%q is shown as %q", id, words)
		}
		if len(page.Codes) != 1 {
			t.Fatalf("%d codes", len(page.Codes))
		}
		// ISO/IEC 18004: four modules are clear on each side.
		code := page.Codes[0]
		side := unit.Length(code.Matrix.Side+8) * code.Module
		left, top := code.X-4*code.Module, code.Y-4*code.Module
		if left < o.Margin.W || top < o.Margin.H || left+side > o.Margin.W+o.Label.W || top+side > o.Margin.H+o.Label.H {
			t.Fatalf("the code of %d modules of %d nm at %d, %d leaves its label", code.Matrix.Side, code.Module, code.X, code.Y)
		}
	})
}

func TestCodesAreOfTheSmallestVersion(t *testing.T) {
	t.Parallel()
	for id, want := range map[string]int{
		strings.Repeat("A", 20): 21, strings.Repeat("A", 21): 25, strings.Repeat("A", 38): 25, strings.Repeat("A", 39): 29,
		strings.Repeat("a", 14): 21, strings.Repeat("a", 15): 25, strings.Repeat("a", 26): 25, strings.Repeat("a", 27): 29,
	} {
		doc := lay(t, sheet.Defaults(unit.Metric), labels.Set{Labels: []labels.Label{{ID: id}}})
		if got := doc.Pages[0].Codes[0].Matrix.Side; got != want {
			t.Errorf("%d times %q: %d modules, want %d", len(id), id[:1], got, want)
		}
	}
}

func TestCautionsSayWhatIsHardToRead(t *testing.T) {
	t.Parallel()
	o := sheet.Defaults(unit.Metric)
	if doc := lay(t, o, labels.Set{Labels: []labels.Label{{ID: "1A-A07"}}, Strips: []labels.Strip{{Holder: "1A-A", Ports: []string{"1A-A:07"}}}}); len(doc.Cautions) > 0 {
		t.Errorf("an ordinary label: %v", doc.Cautions)
	}
	said := strings.Join(lay(t, o, oddSet()).Cautions, "\n")
	o.Label = sheet.Size{W: 20 * mm, H: 8 * mm}
	said += "\n" + strings.Join(lay(t, o, oddSet()).Cautions, "\n")
	for _, want := range []string{"in type below 2 mm", "are finer than 0.25 mm", "printed as code points"} {
		if !strings.Contains(said, want) {
			t.Errorf("nothing says %q:\n%s", want, said)
		}
	}
	said = strings.Join(lay(t, o, labels.Set{Labels: []labels.Label{{ID: strings.Repeat("x", 4000)}}}).Cautions, "\n")
	if !strings.Contains(said, "without a code") {
		t.Errorf("nothing says that there is no code:\n%s", said)
	}
}
