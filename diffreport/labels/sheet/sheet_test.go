package sheet_test

import (
	"bytes"
	"encoding/xml"
	"errors"
	"io"
	"slices"
	"strings"
	"testing"
	"unicode"

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

const mm = unit.Millimetre

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

// measured is the width of a text by the font package's own reading of the
// typeface.
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

// TestAnIdentifierIsNeverCutNorOutsideItsLabel sets any text on any label.
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

// TestCodesAreOfTheSmallestVersion holds the number of modules against the
// capacities of ISO/IEC 18004:2015, table 7, level M, from memory: version 1
// (21 modules) holds 20 letters of its alphabet or 14 bytes, version 2 (25
// modules) 38 or 26.
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

func TestNothingFromARecordBecomesMarkup(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.OneOf(anyText, rapid.SampledFrom([]string{
			`"><script>alert(1)</script>`, "]]>", "<!--", "&lt;", "\u202egpj.exe", "\x1b[31m", "a\x00b", "\u2066x", "\ufeff", "'onload='x",
		}))
		set := labels.Set{
			Plant:  text.Draw(t, "plant"),
			Labels: []labels.Label{{ID: text.Draw(t, "id"), Kind: text.Draw(t, "kind"), Space: text.Draw(t, "space"), At: text.Draw(t, "at")}},
			Strips: []labels.Strip{{Holder: text.Draw(t, "holder"), Ports: []string{text.Draw(t, "port")}}},
		}
		doc, err := sheet.Lay([]labels.Set{set}, sheet.Defaults(unit.Metric))
		if err != nil {
			t.Fatal(err)
		}
		for i := range doc.Pages {
			var b bytes.Buffer
			if err := sheet.SVG(&b, doc, i); err != nil {
				t.Fatal(err)
			}
			harmless(t, b.Bytes())
		}
	})
}

// harmless reads a picture as XML and allows only what the renderer draws.
func harmless(t *rapid.T, picture []byte) {
	allowed := map[string][]string{
		"svg": {"xmlns", "width", "height", "viewBox"}, "title": nil, "defs": nil, "path": {"id", "d", "shape-rendering"}, "rect": {"width", "height", "fill"},
		"g": {"stroke", "stroke-width", "transform", "fill"}, "use": {"href", "x"},
	}
	reader := xml.NewDecoder(bytes.NewReader(picture))
	for {
		token, err := reader.Token()
		if errors.Is(err, io.EOF) {
			return
		}
		if err != nil {
			t.Fatalf("%v in\n%s", err, picture)
		}
		switch token := token.(type) {
		case xml.StartElement:
			attributes, ok := allowed[token.Name.Local]
			for _, a := range token.Attr {
				ok = ok && slices.Contains(attributes, a.Name.Local) && (a.Name.Local != "href" || strings.HasPrefix(a.Value, "#"))
			}
			if !ok {
				t.Fatalf("the picture holds %v", token)
			}
		case xml.CharData:
			if bytes.ContainsFunc(token, func(r rune) bool { return unicode.Is(unicode.Cf, r) || r < ' ' && r != '\n' }) {
				t.Fatalf("the picture holds the text %q", token)
			}
		case xml.Comment, xml.Directive, xml.ProcInst:
			t.Fatalf("the picture holds %T", token)
		}
	}
}

func TestAPDFIsWrittenOfAnyText(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		doc, err := sheet.Lay([]labels.Set{{Plant: anyText.Draw(t, "plant"), Labels: []labels.Label{{ID: anyText.Draw(t, "id"), Kind: anyText.Draw(t, "kind"), At: anyText.Draw(t, "at")}}}}, sheet.Defaults(unit.US))
		if err != nil {
			t.Fatal(err)
		}
		if err := sheet.PDF(io.Discard, doc); err != nil {
			t.Fatal(err)
		}
	})
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
