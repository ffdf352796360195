package diffreport_test

import (
	"strings"
	"testing"

	"homerun/diffreport"
	"homerun/schema/plant"
)

// TestNearToNothing compares plants of which a pathway names a source of interference
// that has no record.
func TestNearToNothing(t *testing.T) {
	t.Parallel()
	const lamp = "interference \"LAMP\" {\n  kind  = \"fluorescent-lamp\"\n  space = \"1-HALL\"\n}\n"
	const nearBoth = "length  = \"25 m\"\n near \"LAMP\" {\n  gap = \"300 mm\"\n }\n near \"TUBE\" {\n  gap = \"200 mm\"\n }"
	with := edited(t, siteText+lamp, `length  = "25 m"`, nearBoth)
	without := edited(t, with, lamp, "")
	const want = "LAMP: it is no part of the cabling; what lies near it is judged again, in 1-T-02"
	for name, texts := range map[string][2]string{
		"a lamp gone": {with, without},
		"a lamp":      {without, with},
		"another":     {with, edited(t, with, "fluorescent-lamp", "discharge-lamp")},
	} {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			var sides [2]*plant.Plant
			for i, text := range texts {
				var b strings.Builder
				b.WriteString(text)
				sides[i] = build([]strings.Builder{b})
			}
			changes := diffreport.Compare(sides[0], sides[1], diffreport.Options{})
			if len(changes) != 1 || changes[0].Label+": "+changes[0].Why != want {
				t.Errorf("got %+v\nwant %s", changes, want)
			}
		})
	}
}
