package diffreport_test

import (
	"fmt"
	"math/bits"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"homerun/diffreport"
	"homerun/schema/plant"
)

// What a good order does is that of site practice: a service is cut over, not
// cut off; of two cords that change places one lets go first; nothing is put
// where something else still is (common practice).

func orderOf(t *testing.T, base, head string, o diffreport.PlanOptions) diffreport.Order {
	t.Helper()
	b, h := plantOf(t, base), plantOf(t, head)
	order := diffreport.Plan(b, h, diffreport.Compare(b, h, diffreport.Options{}), o)
	if !order.Executable {
		t.Fatalf("not executable: %v", order.Clashes)
	}
	return order
}

// inOrder insists that steps with these words come in this order.
func inOrder(t *testing.T, order diffreport.Order, words ...string) []int {
	t.Helper()
	var at []int
	for _, word := range words {
		i := slices.IndexFunc(order.Steps, func(s diffreport.Step) bool { return strings.Contains(s.Text, word) })
		if i < 0 || len(at) > 0 && i < at[len(at)-1]-1 {
			t.Fatalf("%q is not in its place among\n%s", word, strings.Join(sentences(order), "\n"))
		}
		at = append(at, i+1)
	}
	return at
}

func sentences(order diffreport.Order) []string {
	var all []string
	for i := range order.Steps {
		all = append(all, order.Steps[i].Space+": "+order.Steps[i].Text)
	}
	return all
}

func TestAServiceIsCutOverWhenItsNewRunHasPassed(t *testing.T) {
	t.Parallel()
	base := edited(t, siteText, `to     = "1A-SW1:12"`, "to = \"1A-SW1:12\"\n serves = \"ticket desk\"") + "cord \"1-W01\" {\n from = \"1.104:1\"\n to = \"1-DESK:1\"\n}\nequipment \"1-DESK\" {\n kind = \"workstation\"\n space = \"1-HALL\"\n ports = 1\n}\n"
	head := edited(t, base, "  run \"1A-A07\" {\n    from   = \"1A-A:07\"\n    to     = \"1.104:1\"", "  run \"1A-A08\" {\n    from   = \"1A-A:08\"\n    to     = \"1.104:2\"",
		`from   = "1A-A:07"`, `from = "1A-A:08"`, `from = "1.104:1"`, `from = "1.104:2"`)
	order := orderOf(t, base, head, diffreport.PlanOptions{})
	at := inOrder(t, order, "pull 1A-A08", "test 1A-A08", "unplug 1A-C0112 from 1A-A:07", "take 1A-A07 out")
	if len(order.Outages) != 1 || order.Outages[0].Service != "ticket desk" || order.Outages[0].From < at[1] {
		t.Fatalf("the desk is without service before the new run has passed: %+v\n%s", order.Outages, strings.Join(sentences(order), "\n"))
	}
	if out := order.Outages[0]; out.Port != "1.104:1" || !slices.Equal(out.At, []string{"1.104:2"}) || out.When() != fmt.Sprintf("from step %d to step %d, then at 1.104:2", out.From, out.To) {
		t.Errorf("the desk goes on at the other port: %+v, %s", out, out.When())
	}
}

func TestTheNewCableIsPulledBesideTheOldOneWhereTheLinterAllows(t *testing.T) {
	t.Parallel()
	base := edited(t, siteText, "route = [\"1-T-01\"]", "route = [\"1-T-01\"]\n  note = \"one\"")
	head := edited(t, base, `"41 m"`, `"52.5 m"`)
	var asked []*plant.Plant
	order := orderOf(t, base, head, diffreport.PlanOptions{Judge: func(p *plant.Plant) []diffreport.Objection {
		asked = append(asked, p)
		return nil
	}})
	inOrder(t, order, "pull 1A-A07", "disconnect 1A-A07", "take the old cable of 1A-A07 out")
	if len(asked) != 3 || len(asked[2].Runs) != 2 || asked[2].Runs[0].Way == nil || len(asked[2].Runs[0].Way.Pathways) != 1 || len(asked[0].Runs) != 1 {
		t.Fatalf("the linter is asked about before, after and both together; it was asked about %d plants", len(asked))
	}
	full := func(p *plant.Plant) []diffreport.Objection {
		for _, w := range p.Pathways {
			if len(w.Runs) > 1 {
				return []diffreport.Objection{{Rule: "pathway-fill", Record: w.Label, Text: "too full"}}
			}
		}
		return nil
	}
	order = orderOf(t, base, head, diffreport.PlanOptions{Judge: full})
	inOrder(t, order, "disconnect 1A-A07", "take the old cable of 1A-A07 out", "make sure that 1-T-01 is clear of 1A-A07", "pull 1A-A07")
	stood := func(*plant.Plant) []diffreport.Objection {
		return []diffreport.Objection{{Rule: "pathway-fill", Record: "1-T-01", Text: "too full", Excess: 2}}
	}
	inOrder(t, orderOf(t, base, head, diffreport.PlanOptions{Judge: stood}), "pull 1A-A07", "take the old cable of 1A-A07 out")
}

func TestARingOfThreeIsBrokenByAName(t *testing.T) {
	t.Parallel()
	cord := func(label, from, to string) string {
		return "cord \"" + label + "\" {\n from = \"1A-A:" + from + "\"\n to = \"1A-SW1:" + to + "\"\n}\n"
	}
	base := siteText + cord("C1", "11", "1") + cord("C2", "12", "2") + cord("C3", "13", "3")
	head := siteText + cord("C1", "11", "2") + cord("C2", "12", "3") + cord("C3", "13", "1")
	order := orderOf(t, base, head, diffreport.PlanOptions{})
	moment := slices.DeleteFunc(slices.Clone(order.Steps), func(s diffreport.Step) bool { return s.RoomFor == "" })
	if len(moment) != 1 || moment[0].RoomFor != "C3" || !strings.HasSuffix(moment[0].Text, "for a moment: it makes room for C3") || len(order.Steps) != 6 {
		t.Fatalf("one cord lets go, and the others go straight to their places:\n%s", strings.Join(sentences(order), "\n"))
	}
	inOrder(t, order, "unplug C1", "unplug C3", "plug C3 into", "unplug C2", "plug C2 into")
}

func TestTwoCordsAreToldAsAPair(t *testing.T) {
	t.Parallel()
	base := siteText + "cord \"C2\" {\n from = \"1A-A:08\"\n to = \"1A-SW1:13\"\n}\n"
	head := edited(t, base, `"1A-SW1:12"`, `"1A-SW1:X"`, `"1A-SW1:13"`, `"1A-SW1:12"`, `"1A-SW1:X"`, `"1A-SW1:13"`)
	order := orderOf(t, base, head, diffreport.PlanOptions{})
	if order.Steps[0].Action != diffreport.Swap || order.Steps[0].Text != "change over 1A-C0112 and C2: 1A-C0112 from 1A-SW1:12 to 1A-SW1:13, C2 from 1A-SW1:13 to 1A-SW1:12" {
		t.Fatalf("%+v", order.Steps[0])
	}
}

func TestAPlaceIsEmptyBeforeItIsTakenAndARackBeforeItGoes(t *testing.T) {
	t.Parallel()
	base := edited(t, siteText, "panel \"1A-A\" {\n  space = \"1A\"", "rack \"R1\" {\n space = \"1A\"\n}\nrack \"R2\" {\n space = \"1A\"\n}\npanel \"OLD\" {\n space = \"1A\"\n rack = \"R1\"\n unit = 7\n ports = 4\n}\npanel \"1A-A\" {\n  space = \"1A\"")
	head := edited(t, base, "panel \"OLD\" {\n space = \"1A\"\n rack = \"R1\"\n unit = 7\n ports = 4\n}", "panel \"NEW\" {\n space = \"1A\"\n rack = \"R1\"\n unit = 7\n ports = 8\n}")
	inOrder(t, orderOf(t, base, head, diffreport.PlanOptions{}), "take panel OLD out", "install panel NEW")
	head = edited(t, base, "rack \"R1\" {\n space = \"1A\"\n}\n", "", `rack = "R1"`, `rack = "R2"`)
	inOrder(t, orderOf(t, base, head, diffreport.PlanOptions{}), "take panel OLD out", "take rack R1 out")
}

func TestPowerIsOffBeforeContactsPartAndOnAgainAfterwards(t *testing.T) {
	t.Parallel()
	base := edited(t, siteText, "kind  = \"switch\"", "kind = \"switch\"\n supplies = \"type-3\"")
	head := edited(t, base, `"1A-SW1:12"`, `"1A-SW1:13"`)
	order := orderOf(t, base, head, diffreport.PlanOptions{})
	inOrder(t, order, "off at 1A-SW1:12", "unplug", "plug 1A-C0112 into 1A-SW1:13", "on again at 1A-SW1:13", "hand over 1.104:1")
	tagged := edited(t, base, `slack  = "2 m"`, "slack = \"2 m\"\n state = \"tagged\"")
	for _, text := range sentences(orderOf(t, base, tagged, diffreport.PlanOptions{})) {
		if strings.Contains(text, "on again") || strings.Contains(text, "hand over") {
			t.Fatalf("what is taken out of use does not come back: %s", text)
		}
	}
}

func TestHardwareThatStaysHasItsNewLabelBeforeItIsWorkedAt(t *testing.T) {
	t.Parallel()
	head := edited(t, siteText, `panel "1A-A" {`, "panel \"2A-B\" {\n former = \"1A-A\"\n", `"1A-A:07"`, `"2A-B:07"`, `"1A-A:07"`, `"2A-B:08"`)
	order := orderOf(t, siteText, head, diffreport.PlanOptions{})
	inOrder(t, order, "label panel 2A-B (until now 1A-A)", "unplug 1A-C0112 from 2A-B:07 (until now 1A-A:07)", "plug 1A-C0112 into 2A-B:08")
}

// A cable that the records find withdrawn in place was there before the work
// began, wherever its panel was recorded.
func TestWhatIsFoundInPlaceIsThereFromTheStart(t *testing.T) {
	t.Parallel()
	found := edited(t, siteText, `slack  = "2 m"`, "slack = \"2 m\"\n state = \"abandoned\"")
	none := orderOf(t, "", found, diffreport.PlanOptions{})
	if all := strings.Join(sentences(none), "\n"); strings.Contains(all, "1A-A07") {
		t.Fatalf("nobody pulls what is abandoned:\n%s", all)
	}
	planned := edited(t, siteText, `slack  = "2 m"`, `state = "planned"`)
	orderOf(t, planned, edited(t, found, `"1A-SW1:12"`, `"1A-SW1:13"`), diffreport.PlanOptions{})
	b := plantOf(t, siteText)
	h := plantOf(t, edited(t, siteText, `run "1A-A07"`, "run \"1A-A08\" {\n    from = \"1A-A:08\"\n    to = \"1.104:1\"\n    state = \"abandoned\"\n  }\n  run \"1A-A07\"", `to     = "1.104:1"`, `to     = "1.104:2"`))
	order := diffreport.Plan(b, h, diffreport.Compare(b, h, diffreport.Options{}), diffreport.PlanOptions{})
	if order.Executable || !strings.Contains(strings.Join(order.Clashes, "\n"), "1.104:1 rear: the records find 1A-A08 there, where they had 1A-A07") {
		t.Fatalf("two cables were never in one port: %v", order.Clashes)
	}
}

// TestTheCrewWalksLittle compares the number of visits with the least of all
// orders that the steps' own dependencies allow, by trying them all.
func TestTheCrewWalksLittle(t *testing.T) {
	t.Parallel()
	more := 0
	rapid.Check(t, func(t *rapid.T) {
		before := site(t)
		after := edit(t, before)
		base, head := sound(t, before.write(plain(before))), sound(t, after.write(plain(after)))
		order := diffreport.Plan(base, head, diffreport.Compare(base, head, diffreport.Options{}), diffreport.PlanOptions{})
		n := len(order.Steps)
		if n == 0 || n > 14 {
			t.Skip("nothing to walk for, or too many orders to try")
		}
		least, visits := fewestVisits(order.Steps), order.Steps[n-1].Visit
		if visits > least+1 { // a walk put together greedily is not always the shortest
			t.Fatalf("%d visits where %d are enough:\n%s", visits, least, strings.Join(sentences(order), "\n"))
		}
		if visits > least {
			more++
		}
	})
	t.Logf("one visit more than needed: %d times", more)
}

// TestTheCrewLeavesAFloorOnce makes an outlet in each of nine rooms of three
// floors and of the yard, whose labels take turns.
func TestTheCrewLeavesAFloorOnce(t *testing.T) {
	t.Parallel()
	var text strings.Builder
	for i := range 12 {
		kind, floor := "work-area", fmt.Sprint(i%4+1)
		if i%4 == 3 {
			kind, floor = "outdoor", fmt.Sprint(i%3+1)
		}
		fmt.Fprintf(&text, "space \"R%02d\" {\n kind = %q\n floor = %q\n}\noutlet \"O%02d\" {\n space = \"R%02d\"\n ports = 1\n}\n", i, kind, floor, i, i)
	}
	order := orderOf(t, "", text.String(), diffreport.PlanOptions{})
	var rooms []string
	for _, v := range order.Visits() {
		rooms = append(rooms, v.Space)
	}
	if got := strings.Join(rooms, " "); got != "R00 R04 R08 R01 R05 R09 R02 R06 R10 R03 R07 R11" {
		t.Fatalf("floor by floor, the yard last: %s", got)
	}
}

// fewestVisits tries every order, set of steps by set of steps.
func fewestVisits(steps []diffreport.Step) int {
	n := len(steps)
	const never = 1 << 20
	best := make([][]int, 1<<n) // by the steps done and the last of them
	for set := range best {
		best[set] = slices.Repeat([]int{never}, n)
	}
	least := never
	for set := range best {
		for next := range steps {
			if set>>next&1 == 1 || slices.ContainsFunc(steps[next].After, func(a int) bool { return set>>(a-1)&1 == 0 }) {
				continue
			}
			with := set | 1<<next
			if set == 0 {
				best[with][next] = 1
			}
			for last, visits := range best[set] {
				if visits < never {
					if steps[last].Space != steps[next].Space {
						visits++
					}
					best[with][next] = min(best[with][next], visits)
				}
			}
		}
		if bits.OnesCount(uint(set)) == n {
			least = slices.Min(best[set])
		}
	}
	return least
}
