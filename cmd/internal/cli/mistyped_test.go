package cli_test

import (
	"strings"
	"testing"
)

// TestMistyped mistypes a word of each sort and is told the one that was meant,
// or which there are.
func TestMistyped(t *testing.T) {
	t.Parallel()
	r := newRoom(t)
	r.write("rooms.hcl", "space \"1A\" {\n  kind = \"telecommunications-room\"\n}\npanel \"1A-A\" {\n  space = \"1A\"\n  ports = 24\n}\n")
	r.mustGit(r.dir, "add", ".")
	r.mustGit(r.dir, "commit", "-qm", "first")
	for _, c := range []struct{ line, want string }{
		{"lintt", "there is no command \"lintt\"\n  did you mean git homerun lint?\n"},
		{"help lintt", "there is no command \"lintt\"\n  did you mean git homerun lint?\n"},
		{"nothing-like-it", "the commands are init, lint, "},
		{"hook instal", "hook has no command \"instal\"\n  did you mean git homerun hook install?\n"},
		{"lint --stagd", "git homerun lint has no option \"--stagd\"\n  did you mean --staged?\n"},
		{"--plnt pier lint", "has no option \"--plnt\"\n  did you mean --plant?\n"},
		{"lint --hok", "has no option \"--hok\"\n  see git homerun lint -h\n"}, // a hidden one is not offered
		{"lint -q", "git homerun lint has no option \"-q\"\n  see git homerun lint -h\n"},
		{"lint --format", "--format says what: text, json, "},
		{"lint --most many", "--most can not be \"many\": it takes a whole number\n"},
		{"lint --staged=perhaps", "--staged can not be \"perhaps\": it takes no value, true or false\n"},
		{"lint --color red", "--color is auto, always or never, not \"red\"\n"},
		{"lint --format sarf", "there is no format \"sarf\"\n  did you mean sarif?\n"},
		{"trace 1A --format jsn", "did you mean json?\n"},
		{"completion zssh", "did you mean zsh?\n"},
		{"explain lenght-channel", "did you mean length-channel?\n"},
		{"explain pannel", "did you mean panel?\n"},
		{"history 1A-B", "did you mean 1A-A?\n"},
		{"trace 1A-B", "did you mean 1A-A?\n"},
		{"trace 1A-B:07", "did you mean 1A-A:07?\n"},
		{"trace 1A-A:99", "1A-A has no port \"99\"\n  its ports are 1A-A:01 to 1A-A:24\n"},
		{"trace 1A-A:", "1A-A has no port \"\"\n"},
		{"ready 10GBASET", "did you mean 10GBASE-T?\n"},
		{"ready 10GBASE-T --in 1B", "did you mean 1A?\n"},
		{"--plant peir lint", "did you mean pier?\n"},
		{"init --units metrik", "--units \"metrik\" is not known\n"},
	} {
		t.Run(c.line, func(t *testing.T) {
			t.Parallel()
			if out, status := r.homerun(strings.Fields(c.line)...); status != 2 || !strings.Contains(out, c.want) {
				t.Errorf("exit status %d, want 2 and %q:\n%s", status, c.want, out)
			}
		})
	}
}
