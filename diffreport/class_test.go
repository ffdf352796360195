package diffreport_test

import (
	"strings"
	"testing"

	"homerun/diffreport"
	"homerun/schema"
	"homerun/schema/plant"
)

// What each change means on site is that of the trade's own words for moves,
// adds and changes (ANSI/TIA-606, administration of moves, adds and changes: a
// record follows the cable, a label follows the record) and common practice.

const siteText = `
space "1A" { kind = "telecommunications-room" }
space "1-HALL" { kind = "work-area" }
space "1-SHOP" { kind = "workshop" }
cable "c6a" { category = "6A" }
cable "c6" { category = "6" }
pathway "1-T-01" {
  kind    = "tray"
  through = ["1A", "1-HALL"]
  length  = "20 m"
  crossing "W-1-17" {
    rating   = "1 h"
    firestop = "1-FSL07"
  }
}
pathway "1-T-02" {
  kind    = "tray"
  through = ["1A", "1-HALL"]
  length  = "25 m"
}
panel "1A-A" {
  space = "1A"
  ports = 24
}
outlet "1.104" {
  space = "1-HALL"
  ports = 2
}
equipment "1A-SW1" {
  kind  = "switch"
  space = "1A"
  ports = 24
}
bundle "1-B-09" {
  cable = "c6a"
  route = ["1-T-01"]
  run "1A-A07" {
    from   = "1A-A:07"
    to     = "1.104:1"
    length = "41 m"
    slack  = "2 m"
  }
}
cord "1A-C0112" {
  from   = "1A-A:07"
  to     = "1A-SW1:12"
  length = "2 m"
}
`

func plantOf(t *testing.T, text string) *plant.Plant {
	t.Helper()
	var b strings.Builder
	b.WriteString(text)
	return sound(t, build([]strings.Builder{b}))
}

func edited(t *testing.T, text string, edits ...string) string {
	t.Helper()
	for i := 0; i < len(edits); i += 2 {
		if !strings.Contains(text, edits[i]) {
			t.Fatalf("the site does not hold %q", edits[i])
		}
		text = strings.Replace(text, edits[i], edits[i+1], 1)
	}
	return text
}

const testText = `
test "T-1" {
  run    = "1A-A07"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "53 m"
  date   = "2026-03-31"
}
`

func TestClasses(t *testing.T) {
	t.Parallel()
	swapped := siteText + `cord "1A-C0113" {
  from = "1A-A:08"
  to   = "1A-SW1:13"
}
`
	tests := []struct {
		name  string
		text  string
		edits []string
		// want is the class, kind, label and meaning of each change.
		want []string
	}{
		{"an end to another port", siteText, []string{`"1.104:1"`, `"1.104:2"`}, []string{"move run 1A-A07 re-terminate"}},
		{"an end that was not recorded", edited(t, siteText, "    to     = \"1.104:1\"\n", ""), []string{`from   = "1A-A:07"` + "\n    length", `from = "1A-A:07"` + "\n to = \"1.104:1\"\n length"}, []string{"change run 1A-A07 re-terminate"}},
		{"a cord to another port", siteText, []string{`"1A-SW1:12"`, `"1A-SW1:13"`}, []string{"move cord 1A-C0112 re-patch"}},
		{"two cords exchanged", swapped, []string{`"1A-SW1:12"`, `"1A-SW1:14"`, `"1A-SW1:13"`, `"1A-SW1:12"`, `"1A-SW1:14"`, `"1A-SW1:13"`}, []string{"move cord 1A-C0112 re-patch", "move cord 1A-C0113 re-patch"}},
		{"an outlet in another room", siteText, []string{`space = "1-HALL"`, `space = "1-SHOP"`}, []string{"move outlet 1.104 relocate"}},
		{"another cable for the bundle", siteText, []string{`cable = "c6a"`, `cable = "c6"`}, []string{"change run 1A-A07 re-pull"}},
		{"the same cable stated by the run", siteText, []string{`length = "41 m"`, "length = \"41 m\"\n cable = \"c6a\""}, nil},
		{"another route", siteText, []string{`route = ["1-T-01"]`, `route = ["1-T-02"]`}, []string{"change run 1A-A07 re-route"}},
		{"a longer cable", siteText, []string{`"41 m"`, `"52.5 m"`}, []string{"change run 1A-A07 re-pull"}},
		{"no more than the coil", siteText, []string{`"41 m"`, `"43 m"`}, []string{"records-only run 1A-A07 records only"}},
		{"a length as measured", siteText, []string{`"41 m"`, `"52.5 m"`, `cord "1A-C0112"`, testText + `cord "1A-C0112"`}, []string{"records-only run 1A-A07 records only", "records-only test T-1 records only"}},
		{"a length beyond what was measured", siteText, []string{`"41 m"`, `"60 m"`, `cord "1A-C0112"`, testText + `cord "1A-C0112"`}, []string{"change run 1A-A07 re-pull", "records-only test T-1 records only"}},
		{"a shorter length", siteText, []string{`"41 m"`, `"40 m"`}, []string{"records-only run 1A-A07 records only"}},
		{"a unit converted", siteText, []string{`"41 m"`, `"4100 cm"`}, nil},
		{"a planned run installed", edited(t, siteText, `slack  = "2 m"`, `state = "planned"`), []string{`state = "planned"`, `state = "in-service"`}, []string{"add run 1A-A07 re-pull"}},
		{"in service, said or not", siteText, []string{`slack  = "2 m"`, "slack = \"2 m\"\n state = \"in-service\""}, nil},
		{"a run tagged", siteText, []string{`slack  = "2 m"`, "slack = \"2 m\"\n state = \"tagged\""}, []string{"change run 1A-A07 re-terminate"}},
		{"a run kept spare", siteText, []string{`slack  = "2 m"`, "slack = \"2 m\"\n state = \"spare\""}, []string{"records-only run 1A-A07 records only"}},
		{"a planned run planned otherwise", edited(t, siteText, `slack  = "2 m"`, `state = "planned"`), []string{`"1.104:1"`, `"1.104:2"`}, []string{"records-only run 1A-A07 records only"}},
		{"a fire-stop exchanged", siteText, []string{`"1-FSL07"`, `"1-FSL08"`}, []string{"change pathway 1-T-01 re-bond or fire-stop"}},
		{"a rating looked up", siteText, []string{`rating   = "1 h"`, `rating = "2 h"`}, []string{"records-only pathway 1-T-01 records only"}},
		{"a category stated at last", siteText, []string{"ports = 24\n", "ports = 24\n category = \"6A\"\n"}, []string{"records-only panel 1A-A records only"}},
		{"a data sheet corrected", siteText, []string{`cable "c6a" { category = "6A" }`, `cable "c6a" { category = "6" }`}, []string{"records-only cable c6a records only"}},
		{"a room recorded", siteText, []string{`cable "c6a"`, "space \"1B\" { kind = \"equipment-room\" }\ncable \"c6a\""}, []string{"records-only space 1B records only"}},
		{"a panel with a stated former label", siteText, []string{`panel "1A-A" {`, "panel \"2A-B\" {\n former = \"1A-A\"\n", `"1A-A:07"`, `"2A-B:07"`, `"1A-A:07"`, `"2A-B:07"`}, []string{"relabel panel 2A-B relabel"}},
		{"a panel known by what is tied to it", siteText, []string{`panel "1A-A" {`, `panel "2A-B" {`, `"1A-A:07"`, `"2A-B:07"`, `"1A-A:07"`, `"2A-B:07"`}, []string{"relabel panel 2A-B relabel"}},
		{"a panel and its run relabelled", siteText, []string{`panel "1A-A" {`, `panel "2A-B" {`, `"1A-A:07"`, `"2A-B:07"`, `"1A-A:07"`, `"2A-B:07"`, `run "1A-A07"`, `run "2A-B07"`}, []string{"relabel panel 2A-B relabel", "relabel run 2A-B07 relabel"}},
		{"a room relabelled", siteText, []string{`space "1-HALL"`, `space "1-LOBBY"`, `"1A", "1-HALL"`, `"1A", "1-LOBBY"`, `"1A", "1-HALL"`, `"1A", "1-LOBBY"`, `space = "1-HALL"`, `space = "1-LOBBY"`}, []string{"relabel space 1-LOBBY relabel"}},
		{"a run relabelled and moved", siteText, []string{`run "1A-A07" {`, "run \"1A-A08\" {\n former = \"1A-A07\"\n", `from   = "1A-A:07"` + "\n    to", `from = "1A-A:08"` + "\n to"}, []string{"move run 1A-A08 re-terminate"}},
		{"a former label tidied away", edited(t, siteText, `slack  = "2 m"`, "slack = \"2 m\"\n former = \"Z\""), []string{"\n former = \"Z\"", ""}, []string{"records-only run 1A-A07 records only"}},
		{"another bundle, the same way", siteText + "bundle \"1-B-10\" {\n  cable = \"c6a\"\n  route = [\"1-T-01\"]\n}\n", []string{"bundle \"1-B-09\" {", "bundle \"1-B-10\" {", "bundle \"1-B-10\" {\n  cable = \"c6a\"\n  route = [\"1-T-01\"]\n}\n", "bundle \"1-B-09\" {\n  cable = \"c6a\"\n  route = [\"1-T-01\"]\n}\n"}, []string{"records-only run 1A-A07 records only"}},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			t.Parallel()
			changes := diffreport.Compare(plantOf(t, tt.text), plantOf(t, edited(t, tt.text, tt.edits...)), diffreport.Options{})
			var got []string
			for i := range changes {
				c := &changes[i]
				got = append(got, strings.Join([]string{c.Class.String(), c.Kind, c.Label, c.Meaning.String()}, " "))
				if c.Why == "" {
					t.Errorf("%s does not say why it is in its class", got[len(got)-1])
				}
			}
			if strings.Join(got, "\n") != strings.Join(tt.want, "\n") {
				t.Errorf("got\n%s\nwant\n%s\nwhy: %v", strings.Join(got, "\n"), strings.Join(tt.want, "\n"), full(changes))
			}
		})
	}
}

func TestLabelsExchangedByTheirFormerOnes(t *testing.T) {
	t.Parallel()
	text := siteText + "outlet \"1.105\" {\n  space = \"1-SHOP\"\n  ports = 2\n}\n"
	head := edited(t, text, `outlet "1.104" {`, "outlet \"1.10X\" {\n former = \"1.104\"\n", `outlet "1.105" {`, "outlet \"1.104\" {\n former = \"1.105\"\n", `outlet "1.10X" {`, `outlet "1.105" {`, `"1.104:1"`, `"1.105:1"`)
	changes := diffreport.Compare(plantOf(t, text), plantOf(t, head), diffreport.Options{})
	if got := strings.Join(listed(changes), "\n"); got != "outlet 1.104>1.105: \noutlet 1.105>1.104: " {
		t.Fatalf("two labels exchanged, and the run between stays: %s", got)
	}
	was := diffreport.Former(changes)
	if was("1.104") != "1.105" || was("1.105:1") != "1.104:1" || was("1A-A") != "1A-A" {
		t.Errorf("1.104 was %q, 1.105:1 was %q", was("1.104"), was("1.105:1"))
	}
}

// TestWhatCanNotBeReadStaysWhereItIs relabels a cable type beside a run with an end
// that can not be read: the run is the same text before and after.
func TestWhatCanNotBeReadStaysWhereItIs(t *testing.T) {
	t.Parallel()
	reader := schema.NewReader()
	of := func(cable string) *plant.Plant {
		text := siteText + "run \"1A-A09\" {\n  from = \"1A-A:09\"\n  to = \"1.104\"\n}\n" + cable
		return plant.Build(".", []*schema.File{reader.ReadFile("plant.hcl", text)})
	}
	base, head := of("cable \"spare\" {\n  category = \"6A\"\n}\n"), of("cable \"stock\" {\n  former = \"spare\"\n  category = \"6A\"\n}\n")
	if got := strings.Join(listed(diffreport.Compare(base, head, diffreport.Options{})), "\n"); got != "cable spare>stock: " {
		t.Fatalf("only the type is called otherwise: %s", got)
	}
}

func TestALabelGivenToSomethingNewWasNothing(t *testing.T) {
	t.Parallel()
	head := edited(t, siteText, `outlet "1.104" {`, "outlet \"1.105\" {\n former = \"1.104\"\n", `"1.104:1"`, `"1.105:1"`) +
		"outlet \"1.104\" {\n  space = \"1-SHOP\"\n  ports = 2\n  former = \"1.999\"\n}\n"
	changes := diffreport.Compare(plantOf(t, siteText), plantOf(t, head), diffreport.Options{})
	// A label that still stands has not been left: the record that claims it
	// is new, and the run goes to another outlet.
	if got := strings.Join(listed(changes), "\n"); got != "outlet 1.104>1.104: space\noutlet >1.105\nrun 1A-A07>1A-A07: to" {
		t.Fatalf("got %s", got)
	}
}

func TestADuplexCordTakesEveryPortOfItsRow(t *testing.T) {
	t.Parallel()
	base := plantOf(t, siteText)
	head := plantOf(t, edited(t, siteText, "from   = \"1A-A:07\"\n  to     = \"1A-SW1:12\"", "from = \"1A-A:07-08\"\n to = \"1A-SW1:12-13\""))
	order := diffreport.Plan(base, head, diffreport.Compare(base, head, diffreport.Options{}), diffreport.PlanOptions{})
	if !order.Executable || len(order.Steps) != 3 || order.Steps[1].Text != "plug 1A-C0112 into 1A-A:07-8 and 1A-SW1:12-13" {
		t.Fatalf("%v %+v", order.Clashes, order.Steps)
	}
	taken := plantOf(t, edited(t, siteText, "from   = \"1A-A:07\"\n  to     = \"1A-SW1:12\"", "from = \"1A-A:07-08\"\n to = \"1A-SW1:12\"")+"cord \"1A-C0113\" {\n  from = \"1A-A:09\"\n  to = \"1A-SW1:14\"\n}\n")
	back := plantOf(t, siteText+"cord \"1A-C0113\" {\n  from = \"1A-A:08\"\n  to = \"1A-SW1:14\"\n}\n")
	order = diffreport.Plan(taken, back, diffreport.Compare(taken, back, diffreport.Options{}), diffreport.PlanOptions{})
	if !order.Executable {
		t.Fatalf("the second port of the row is freed before it is taken: %v", order.Clashes)
	}
}

func TestUnreadableValuesAreComparedAsWritten(t *testing.T) {
	t.Parallel()
	broken := func(length string) *plant.Plant {
		reader := schema.NewReader()
		return plant.Build(".", []*schema.File{reader.ReadFile("plant.hcl", "plant \"mole-end\" { standard = \"TIA-568\" }\nrun \"1\" { length = "+length+" }\nrun \"1\" { note = \"again\" }\nrun { }\n")})
	}
	if changes := diffreport.Compare(broken("41"), broken("41"), diffreport.Options{}); len(changes) > 0 {
		t.Errorf("the same mistake is no change: %v", full(changes))
	}
	if changes := diffreport.Compare(broken("41"), broken("42"), diffreport.Options{}); len(changes) != 1 {
		t.Errorf("another mistake is a change: %v", full(changes))
	}
	if changes := diffreport.Compare(nil, broken("41"), diffreport.Options{}); len(changes) != 4 {
		t.Errorf("against nothing everything is new: %v", full(changes))
	}
}
