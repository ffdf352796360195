package schedule_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"homerun/diffreport/schedule"
	"homerun/schema"
	"homerun/schema/plant"
)

const pier = `plant "pier" {
  standard = "TIA-568"
}
space "1" {
  kind = "work-area"
}
space "1A" {
  kind = "telecommunications-room"
}
space "1-101" {
  kind   = "work-area"
  inside = "1"
}
rack "1A-R1" {
  space = "1A"
}
cable "c6" {
  category = "6"
  screen   = "U/UTP"
  listing  = "CMP"
}
cable "om4" {
  fibre     = "OM4"
  euroclass = "Cca-s1b,d2,a2"
}
panel "1A-A" {
  space = "1A"
  rack  = "1A-R1"
  unit  = 40
  ports = 12
}
outlet "1.101" {
  space = "1-101"
  ports = 2
}
consolidation-point "1-CP" {
  space = "1"
  ports = 2
}
equipment "1A-SW" {
  kind  = "switch"
  space = "1A"
  ports = 24
}
bundle "1-B" {
  cable = "c6"
  run "1A-A10" {
    from   = "1A-A:10"
    to     = "1.101:1"
    length = "41.5 m"
    serves = "1000BASE-T"
  }
  run "1A-A9" {
    from      = "1A-A:9"
    to        = "1-CP:1"
    length    = "30 m"
    installed = 2024
  }
}
run "1-CP-1" {
  cable  = "c6"
  from   = "1-CP:1"
  to     = "1.101:2"
  length = "12 m"
}
run "1A-F" {
  cable = "om4"
  from  = "1A-A:11-12"
  state = "abandoned"
}
cord "c1" {
  from = "1A-SW:3"
  to   = "1A-A:9"
}
test "t1" {
  run    = "1-CP-1"
  limit  = "TIA permanent link, Category 6"
  result = "pass"
  date   = "2023-05-01"
  margin = "4.2 dB"
}
test "t2" {
  run    = "1A-A10"
  limit  = "TIA channel, Category 6"
  result = "pass"
  date   = "2025-05-01"
}
test "t3" {
  run    = "1A-A10"
  limit  = "TIA permanent link, Category 6"
  result = "fail"
  date   = "2025-05-01"
  length = "41 m"
}
`

// TestSchedules holds the schedules to what was worked out by hand from a small plant.
func TestSchedules(t *testing.T) {
	f := schema.NewReader().ReadFile("plant.hcl", pier)
	p := plant.Build(".", []*schema.File{f})
	if len(p.Problems) > 0 {
		t.Fatal(p.Problems)
	}
	want := map[string]string{
		"cable-schedule": `
1-CP-1|c6|Category 6|U/UTP|CMP|1|1-CP:1|1-101|1.101:2||12 m|||in-service||2023-05-01|pass
1A-A9|c6|Category 6|U/UTP|CMP|1A|1A-A:09|1|1-CP:1||30 m|1-B||in-service|2024|2023-05-01|pass
1A-A10|c6|Category 6|U/UTP|CMP|1A|1A-A:10|1-101|1.101:1||41.5 m|1-B|1000BASE-T|in-service||2025-05-01|fail
1A-F|om4|OM4||Cca-s1b,d2,a2|1A|1A-A:11-12|||||||abandoned|||
`,
		"test-schedule": `
1A-A9|1-CP-1|1A-A:09|1.101:2|TIA permanent link, Category 6|42 m|in-service|2023-05-01|TIA permanent link, Category 6|pass||4.2 dB||pulled after its latest test
1A-A10||1A-A:10|1.101:1|TIA permanent link, Category 6|41.5 m|in-service|2025-05-01|TIA permanent link, Category 6|fail|41 m|||failed: mend and measure again
`,
		"panel-schedule": `
1A-A|1A|1A-R1|40|1A-A:01|free||||free|
1A-A|1A|1A-R1|40|1A-A:02|free||||free|
1A-A|1A|1A-R1|40|1A-A:03|free||||free|
1A-A|1A|1A-R1|40|1A-A:04|free||||free|
1A-A|1A|1A-R1|40|1A-A:05|free||||free|
1A-A|1A|1A-R1|40|1A-A:06|free||||free|
1A-A|1A|1A-R1|40|1A-A:07|free||||free|
1A-A|1A|1A-R1|40|1A-A:08|free||||free|
1A-A|1A|1A-R1|40|1A-A:09|1A-A9|1-CP:1||in-service|c1|1A-SW:03
1A-A|1A|1A-R1|40|1A-A:10|1A-A10|1.101:1|1000BASE-T|in-service|free|
1A-A|1A|1A-R1|40|1A-A:11|1A-F|not recorded||abandoned|free|
1A-A|1A|1A-R1|40|1A-A:12|1A-F|not recorded||abandoned|free|
`,
	}
	for _, s := range schedule.All() {
		table := s.Of(p, nil)
		if diff := cmp.Diff(lines(want[s.Name]), rowsOf(t, table)); diff != "" {
			t.Errorf("%s (-want +got):\n%s", s.Name, diff)
		}
	}

	// In a space: what ends there, or in a space inside it.
	item, _ := p.Find("1")
	inside, ok := item.(*plant.Space)
	if !ok {
		t.Fatal("no space 1")
	}
	for name, labels := range map[string][]string{"cable-schedule": {"1-CP-1", "1A-A9", "1A-A10"}, "test-schedule": {"1A-A9", "1A-A10"}, "panel-schedule": nil} {
		s, _ := schedule.Named(name)
		var got []string
		for _, row := range s.Of(p, inside).Rows {
			got = append(got, fmt.Sprint(row[0]))
		}
		if diff := cmp.Diff(labels, got); diff != "" {
			t.Errorf("%s in 1 (-want +got):\n%s", name, diff)
		}
	}
}

func lines(text string) []string { return strings.Split(strings.TrimSpace(text), "\n") }

func rowsOf(t *testing.T, table schedule.Table) (rows []string) {
	t.Helper()
	for _, row := range table.Rows {
		if len(row) != len(table.Headings) {
			t.Errorf("%d cells below %d headings", len(row), len(table.Headings))
		}
		cells := make([]string, len(row))
		for i, cell := range row {
			cells[i] = fmt.Sprint(cell)
		}
		rows = append(rows, strings.Join(cells, "|"))
	}
	return rows
}
