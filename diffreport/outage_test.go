package diffreport_test

import (
	"testing"

	"homerun/diffreport"
)

// A channel over several panels loses its service at the end that its runs lead
// to, and in whatever order the records stand, at the same end.
func TestTheFarEndOfAChannelIsTheSameInWhateverOrderItsRecordsStand(t *testing.T) {
	t.Parallel()
	const panels = "space \"1A\" {\n kind = \"telecommunications-room\"\n}\npanel \"X\" {\n space = \"1A\"\n ports = 4\n}\npanel \"Y\" {\n space = \"1A\"\n ports = 4\n}\npanel \"Z\" {\n space = \"1A\"\n ports = 4\n}\n"
	link := func(kind, label, from, to string) string {
		return kind + " \"" + label + "\" {\n from = \"" + from + "\"\n to = \"" + to + "\"\n length = \"20 m\"\n}\n"
	}
	for name, c := range map[string]struct{ one, other, want string }{
		"both runs lead on":          {link("run", "T1", "X:1", "Y:1"), link("run", "T2", "Y:2", "Z:1"), "Z:1"},
		"both runs lead back":        {link("run", "T1", "Y:1", "X:1"), link("run", "T2", "Z:1", "Y:2"), "X:1"},
		"they lead out to both ends": {link("run", "T1", "Y:1", "Z:1"), link("run", "T2", "Y:2", "X:1"), "X:1"},
		"they meet in the middle":    {link("run", "T1", "Z:1", "Y:1"), link("run", "T2", "X:1", "Y:2"), "X:1"},
		"the channel is a ring":      {link("run", "T1", "Z:1", "Y:1") + link("cord", "C2", "Z:1", "X:1"), link("run", "T2", "X:1", "Y:2"), "Y:1"},
	} {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			for _, runs := range []string{c.one + c.other, c.other + c.one} {
				order := orderOf(t, panels+runs+link("cord", "C1", "Y:1", "Y:2"), panels+runs, diffreport.PlanOptions{})
				if len(order.Outages) != 1 || order.Outages[0].Port != c.want {
					t.Errorf("service is lost at %+v, not at %s, where the records stand so:\n%s", order.Outages, c.want, runs)
				}
			}
		})
	}
}
