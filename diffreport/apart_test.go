package diffreport_test

import (
	"slices"
	"strings"
	"testing"

	"homerun/diffreport"
)

// A cord that is plugged in at one end of a run while another still hangs at
// the far end makes a channel that nobody has recorded: it may carry a service
// to where it must not go. What lies between the two may be worked on as well.
func TestWhatIsPluggedInWaitsForTheCordAtTheOtherEndOfTheChannel(t *testing.T) {
	t.Parallel()
	const desk = "equipment \"1-DESK\" {\n kind = \"workstation\"\n space = \"1-HALL\"\n ports = 1\n}\n"
	const deskCord = "cord \"1-W01\" {\n from = \"1.104:1\"\n to = \"1-DESK:1\"\n}\n"
	const run = "  run \"1A-A07\" {\n"
	const moved = "cord \"1A-C0112\" {\n  from   = \"1A-A:07\""
	across := edited(t, siteText, `panel "1A-A" {`, "panel \"1A-X\" {\n  space = \"1A\"\n  ports = 24\n}\ncord \"1A-X01\" {\n  from = \"1A-X:01\"\n  to = \"1A-A:07\"\n}\npanel \"1A-A\" {",
		moved, "cord \"1A-C0112\" {\n  from   = \"1A-X:02\"",
		run, "  run \"1A-N01\" {\n    from = \"1A-X:01\"\n    to = \"1.104:2\"\n    length = \"30 m\"\n  }\n"+run)
	// The cord at the outlet's second port meets, over the run, the cord between
	// the panels and the other run, what hangs at the outlet's first port.
	atTwo := strings.ReplaceAll(deskCord, "1.104:1", "1.104:2")
	leaving := "cord \"1-W00\" {\n from = \"1.104:1\"\n to = \"1A-SW1:20\"\n}\n"
	for name, c := range map[string]struct{ base, head, off, on string }{
		"the run stays as it is": {
			siteText + desk, edited(t, siteText, moved, strings.Replace(moved, "07", "09", 1)) + desk + deskCord, "unplug 1A-C0112", "plug 1-W01",
		},
		"the run gets another label": {
			siteText + desk, edited(t, siteText, run, "  run \"1A-B07\" {\n    former = \"1A-A07\"\n", moved, strings.Replace(moved, "07", "09", 1)) + desk + deskCord, "unplug 1A-C0112", "plug 1-W01",
		},
		"the run is moved at its far end": {
			siteText + desk, edited(t, siteText, run+"    from   = \"1A-A:07\"", run+"    from   = \"1A-A:08\"", moved, strings.Replace(moved, "07", "09", 1)) + desk + deskCord, "disconnect 1A-A07", "plug 1-W01",
		},
		"two runs and a cord between panels stay": {
			across + desk + leaving, across + desk + atTwo, "unplug 1-W00", "plug 1-W01",
		},
		"the cord between the panels gets another label": {
			across + desk + leaving, edited(t, across, `cord "1A-X01" {`, "cord \"1A-X77\" {\n  former = \"1A-X01\"") + desk + atTwo, "unplug 1-W00", "plug 1-W01",
		},
	} {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			order := orderOf(t, c.base, c.head, diffreport.PlanOptions{})
			at := inOrder(t, order, c.off, c.on)
			if !slices.Contains(order.Steps[at[1]-1].After, at[0]) {
				t.Fatalf("step %d may be done before step %d:\n%s", at[1], at[0], strings.Join(sentences(order), "\n"))
			}
		})
	}
}
