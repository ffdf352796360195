package render_test

import (
	"bytes"
	"regexp"
	"strings"
	"testing"

	"homerun/diffreport/render"
	"homerun/schema"
)

func page(t *testing.T, jobs ...render.Job) string {
	t.Helper()
	var first, again bytes.Buffer
	if err := render.OrderPage(&first, jobs); err != nil {
		t.Fatal(err)
	}
	if err := render.OrderPage(&again, jobs); err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(first.Bytes(), again.Bytes()) {
		t.Error("the same orders gave two pages")
	}
	return first.String()
}

// TestHostilePage puts every hostile text into every place of an order: the page
// has the elements of a harmless one, and shows the text as it is written.
func TestHostilePage(t *testing.T) {
	t.Parallel()
	harmless := page(t, harmlessJob())
	// Each list of an order is as long as the corpus, so a few shifts bring every
	// text to every place.
	for shift := 0; shift < len(hostile); shift += 9 {
		got := page(t, hostileJob(shift))
		sameShape(t, harmless, got)
		if bad := invisible(got); bad != "" {
			t.Fatalf("the page holds %q", bad)
		}
		if shift == 0 {
			shown := words(t, got)
			for _, text := range hostile {
				if want := strings.Join(strings.Fields(schema.Printable(text)), " "); !strings.Contains(shown, want) {
					t.Errorf("the page does not show %q", want)
				}
			}
		}
	}
}

// TestHostileDrawings does the same with labels and titles, in drawings.
func TestHostileDrawings(t *testing.T) {
	t.Parallel()
	got := page(t, hostilePlants(t))
	for _, element := range shape(t, got) {
		name, _, _ := strings.Cut(element, " ")
		switch name {
		case "script", "b", "i", "x", "img", "a":
			if name == "b" && element == "b class=label" || name == "b" && element == "b" || name == "i" && element == "i" || name == "a" && strings.HasPrefix(element, "a href=#o0-visit-") {
				continue
			}
			t.Errorf("the page has <%s>", element)
		}
		if strings.Contains(element, " on") {
			t.Errorf("the page has <%s>", element)
		}
	}
	shown := words(t, got)
	for _, want := range []string{`<b>1A</b>`, `</text>&`, `]]>`, `**1**`, `A"><x`, `</svg><script>document.title='taken'`, `" onload="x`} {
		if !strings.Contains(shown, want) {
			t.Errorf("the page does not show %q", want)
		}
	}
}

// TestPageStandsAlone holds the page to what the HTML standard lets it do
// without a network: no element that loads, no style that does, no script.
func TestPageStandsAlone(t *testing.T) {
	t.Parallel()
	got := page(t, hostilePlants(t), harmlessJob())
	loads := regexp.MustCompile(`(?i)^(script|link|img|iframe|object|embed|video|audio|source|base|form|image|foreignobject)\b| (src|srcset|href=[^#]|xlink)`)
	for _, element := range shape(t, got) {
		if loads.MatchString(element) {
			t.Errorf("the page has <%s>", element)
		}
	}
	if strings.Contains(got, "url(") || strings.Contains(got, "@import") {
		t.Error("the style loads something")
	}
	if strings.Contains(got, "ZgotmplZ") {
		t.Error("a text stands where the template refuses it")
	}
}

// TestLinksOfSeveralOrders keeps each link inside its own order.
func TestLinksOfSeveralOrders(t *testing.T) {
	t.Parallel()
	got := page(t, harmlessJob(), harmlessJob())
	ids := make(map[string]int)
	for _, element := range shape(t, got) {
		if _, id, ok := strings.Cut(element, " id="); ok {
			id, _, _ = strings.Cut(id, " ")
			ids[id]++
		}
	}
	for id, n := range ids {
		if n > 1 {
			t.Errorf("%d elements are called %s", n, id)
		}
	}
	for _, element := range shape(t, got) {
		if _, to, ok := strings.Cut(element, "href=#"); ok && ids[to] != 1 {
			t.Errorf("nothing is called %s", to)
		}
	}
}
