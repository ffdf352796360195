package console_test

import (
	"encoding/json"
	"strings"
	"testing"
	"unicode"

	"pgregory.net/rapid"

	"homerun/schema/console"
)

// TestJSON holds any text to the document: it is read back to the character
// with the standard library, and nothing in the document misleads a reader.
func TestJSON(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		texts := rapid.SliceOf(rapid.String()).Draw(t, "texts")
		texts = append(texts, "\x7f\u0085\u2028\u202e\u200b\ufeff\U000e0041<b>&")
		var b strings.Builder
		if err := console.JSON(&b, texts); err != nil {
			t.Fatal(err)
		}
		var back []string
		if err := json.Unmarshal([]byte(b.String()), &back); err != nil {
			t.Fatalf("%v:\n%s", err, b.String())
		}
		if strings.Join(back, "|") != strings.Join(texts, "|") {
			t.Fatalf("%q came back as %q", texts, back)
		}
		for _, r := range b.String() {
			if r != '\n' && !unicode.IsGraphic(r) || unicode.Is(unicode.Cf, r) || strings.ContainsRune("<>&", r) {
				t.Fatalf("%U stands in %q", r, b.String())
			}
		}
	})
}
