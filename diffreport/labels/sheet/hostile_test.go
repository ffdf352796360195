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

	"pgregory.net/rapid"

	"homerun/diffreport/labels"
	"homerun/diffreport/labels/sheet"
	"homerun/schema/unit"
)

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
