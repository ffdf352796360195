package diffreport_test

import (
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"homerun/diffreport"
)

// TestWhyIsSaidForPeopleOnSite holds the wording of one change of each sort. The
// words are those of the trade (common practice), never the name of a field
// alone where something happens on site.
func TestWhyIsSaidForPeopleOnSite(t *testing.T) {
	t.Parallel()
	racked := edited(t, siteText, "panel \"1A-A\" {\n  space = \"1A\"", "rack \"R1\" {\n space = \"1A\"\n}\nrack \"R2\" {\n space = \"1A\"\n}\npanel \"1A-A\" {\n  space = \"1A\"\n  rack = \"R1\"\n  unit = 20\n  category = \"6\"\n  pinout = \"T568A\"")
	bonded := siteText + "busbar \"SBB\" {\n kind = \"secondary\"\n space = \"1A\"\n}\nrack \"R1\" {\n space = \"1A\"\n}\n"
	lamp := "interference \"LAMP\" {\n kind = \"fluorescent-lamp\"\n space = \"1-HALL\"\n}\n"
	near := edited(t, siteText+lamp, `length  = "25 m"`, "length = \"25 m\"\n near \"LAMP\" {\n  gap = \"300 mm\"\n }")
	for _, tt := range []struct {
		name, text string
		edits      []string
		want       string
	}{
		{"a run to another outlet", siteText, []string{`"1.104:1"`, `"1.104:2"`}, "1A-A07: its end at 1.104:1 goes to 1.104:2"},
		{"a cord at both ends", siteText, []string{"from   = \"1A-A:07\"\n  to     = \"1A-SW1:12\"", "from = \"1A-A:08\"\n to = \"1A-SW1:13\""}, "1A-C0112: its end at 1A-A:07 goes to 1A-A:08; its end at 1A-SW1:12 goes to 1A-SW1:13"},
		{"an end that was not recorded", edited(t, siteText, "    to     = \"1.104:1\"\n", ""), []string{`from   = "1A-A:07"` + "\n    length", `from = "1A-A:07"` + "\n to = \"1.104:1\"\n length"}, "1A-A07: to 1.104:1: its end is terminated there"},
		{"an outlet in another room", siteText, []string{`space = "1-HALL"`, `space = "1-SHOP"`}, "1.104: it goes from 1-HALL to 1-SHOP"},
		{"a panel further up", racked, []string{"unit = 20", "unit = 22"}, "1A-A: it goes from unit 20 to 22"},
		{"a panel in another rack", racked, []string{"rack = \"R1\"", "rack = \"R2\""}, "1A-A: it goes from rack R1 to R2"},
		{"a better panel", racked, []string{`category = "6"` + "\n  pinout", `category = "6A"` + "\n  pinout"}, "1A-A: category 6 becomes 6A: another panel takes its place"},
		{"other wiring", racked, []string{`"T568A"`, `"T568B"`}, "1A-A: pinout T568A becomes T568B: the runs on it are terminated again"},
		{"a bond", bonded, []string{"rack \"R1\" {\n", "rack \"R1\" {\n bond = \"SBB\"\n"}, "R1: bond SBB: its bond is made anew"},
		{"a fire-stop", siteText, []string{`"1-FSL07"`, `"1-FSL08"`}, "1-T-01: crossing W-1-17 firestop 1-FSL07 becomes 1-FSL08: the fire-stop is made anew"},
		{"another tray", siteText, []string{`kind    = "tray"`, `kind = "ladder"`}, "1-T-01: kind tray becomes ladder: the pathway is altered"},
		{"another way", siteText, []string{`route = ["1-T-01"]`, `route = ["1-T-02"]`}, "1A-A07: route 1-T-01 becomes 1-T-02: a new cable is pulled and the old one taken out"},
		{"a longer cable", siteText, []string{`"41 m"`, `"52.5 m"`}, "1A-A07: the cable is longer than the one that is there, and no test measured it so: a new cable is pulled and the old one taken out"},
		{"another cord", siteText, []string{`length = "2 m"`, `length = "3 m"`}, "1A-C0112: length 2 m becomes 3 m: another cord takes its place"},
		{"a new run", siteText, []string{"  run \"1A-A07\" {", "  run \"1A-A08\" {\n  from = \"1A-A:08\"\n  to = \"1.104:2\"\n }\n  run \"1A-A07\" {"}, "1A-A08: it is new"},
		{"a cord gone", siteText, []string{"cord \"1A-C0112\" {\n  from   = \"1A-A:07\"\n  to     = \"1A-SW1:12\"\n  length = \"2 m\"\n}\n", ""}, "1A-C0112: it is taken out"},
		{"a run tagged", siteText, []string{`slack  = "2 m"`, "slack = \"2 m\"\n state = \"tagged\""}, "1A-A07: it is taken out of use and tagged for future use"},
		{"a planned run pulled", edited(t, siteText, `slack  = "2 m"`, `state = "planned"`), []string{`state = "planned"`, `state = "in-service"`}, "1A-A07: it was only planned: it is installed now"},
		{"a label as stated", siteText, []string{`panel "1A-A" {`, "panel \"2A-B\" {\n former = \"1A-A\"\n", `"1A-A:07"`, `"2A-B:07"`, `"1A-A:07"`, `"2A-B:07"`}, "2A-B: only its label changes: its record says so; 1 run and 1 cord stay on its ports"},
		{"a label known by its ends", siteText, []string{`cord "1A-C0112"`, `cord "1A-C0113"`}, "1A-C0113: only its label changes: its ends are the same"},
		{"a label and an end", siteText, []string{`run "1A-A07" {`, "run \"1A-A08\" {\n former = \"1A-A07\"\n", `from   = "1A-A:07"` + "\n    to", `from = "1A-A:08"` + "\n to"}, "1A-A08: its end at 1A-A:07 goes to 1A-A:08; its label changes too: its record says so"},
		{"a room's name", edited(t, siteText, `space "1-SHOP" { kind = "workshop" }`, "space \"1-SHOP\" {\n kind = \"workshop\"\n title = \"shop\"\n}"), []string{`"shop"`, `"old shop"`}, "1-SHOP: its title is corrected"},
		{"a remark", siteText, []string{"  ports = 24\n", "  ports = 24\n note = \"seen\"\n"}, "1A-A: its note is written down for the first time"},
		{"a length as measured", siteText, []string{`"41 m"`, `"52.5 m"`, `cord "1A-C0112"`, testText + `cord "1A-C0112"`}, "1A-A07: test T-1 measured 53 m, within 5 % of the length that is recorded now\nT-1: a test exists only in the records"},
		{"another lamp", near, []string{`"fluorescent-lamp"`, `"discharge-lamp"`}, "LAMP: it is no part of the cabling; what lies near it is judged again, in 1-T-02"},
		{"a lamp", siteText, []string{`cable "c6a"`, lamp + `cable "c6a"`}, "LAMP: it is no part of the cabling; no pathway is recorded near it"},
		{"a lamp under another name", near, []string{`near "LAMP"`, `near "TUBE"`, `interference "LAMP"`, `interference "TUBE"`}, "TUBE: it is no part of the cabling; what lies near it is judged again, in 1-T-02"},
		{"a lamp gone", siteText + lamp, []string{lamp, ""}, "LAMP: it is no part of the cabling; no pathway is recorded near it"},
	} {
		t.Run(tt.name, func(t *testing.T) {
			t.Parallel()
			changes := diffreport.Compare(plantOf(t, tt.text), plantOf(t, edited(t, tt.text, tt.edits...)), diffreport.Options{})
			var got []string
			for i := range changes {
				got = append(got, changes[i].Label+": "+changes[i].Why)
			}
			if diff := cmp.Diff(tt.want, strings.Join(got, "\n")); diff != "" {
				t.Error(diff)
			}
			for i := range changes {
				if changes[i].Kind == "interference" && changes[i].Class != diffreport.ClassRecordsOnly {
					t.Errorf("%s is %s: a machine is no work of the crew's", changes[i].Label, changes[i].Class)
				}
			}
		})
	}
}
