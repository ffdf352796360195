package render_test

import (
	"slices"
	"strings"
	"testing"

	"golang.org/x/net/html"
)

// shape lists the elements of a page with their attributes, as a parser that
// follows the HTML standard reads them, without the texts. Attributes that hold
// texts are named only.
func shape(t *testing.T, page string) []string {
	t.Helper()
	root, err := html.Parse(strings.NewReader(page))
	if err != nil {
		t.Fatal(err)
	}
	var all []string
	for n := range root.Descendants() {
		if n.Type != html.ElementNode || isWhole(n) {
			continue
		}
		line := n.Data
		for _, a := range n.Attr {
			if a.Key == "aria-label" || a.Key == "width" || a.Key == "height" || a.Key == "viewbox" || a.Key == "viewBox" {
				line += " " + a.Key
				continue
			}
			// whether a visit shares a sheet depends on how long its texts are
			line += " " + a.Key + "=" + strings.TrimSuffix(a.Val, " brief")
		}
		all = append(all, line)
	}
	return all
}

// isWhole says whether an element only keeps a label together, which depends on
// the text.
func isWhole(n *html.Node) bool {
	return n.Data == "i" && len(n.Attr) == 0 ||
		n.Data == "span" && len(n.Attr) == 1 && n.Attr[0] == html.Attribute{Key: "class", Val: "whole"}
}

// textsOf lists the texts of a page, outside of style and script.
func textsOf(t *testing.T, page string) []string {
	t.Helper()
	root, err := html.Parse(strings.NewReader(page))
	if err != nil {
		t.Fatal(err)
	}
	var all []string
	for n := range root.Descendants() {
		if n.Type == html.TextNode && n.Parent.Data != "style" {
			all = append(all, n.Data)
		}
	}
	return all
}

// words are all texts of a page with their white space made even.
func words(t *testing.T, page string) string {
	t.Helper()
	return strings.Join(strings.Fields(strings.Join(textsOf(t, page), "")), " ")
}

// sameShape insists that two pages differ in nothing but texts.
func sameShape(t *testing.T, harmless, other string) {
	t.Helper()
	want, got := shape(t, harmless), shape(t, other)
	if slices.Equal(want, got) {
		return
	}
	for i := range min(len(want), len(got)) {
		if want[i] != got[i] {
			t.Fatalf("element %d is <%s>, and <%s> where the texts are harmless", i, got[i], want[i])
		}
	}
	t.Fatalf("%d elements, and %d where the texts are harmless", len(got), len(want))
}

// invisible are the characters that no document may hold: they do not print.
func invisible(text string) string {
	for _, bad := range []string{"\x1b", "\x07", "\x00", "\r", "\u202e", "\u202c", "\u2066", "\u200b", "\ufeff", "\u2028", "\u0085", "\U000e0041", "\xff"} {
		if strings.Contains(text, bad) {
			return bad
		}
	}
	return ""
}
