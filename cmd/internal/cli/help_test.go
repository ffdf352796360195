package cli_test

import (
	"regexp"
	"strings"
	"testing"
	"unicode/utf8"
)

// TestHelp asks every command, and those of hook, for help in each way: it is
// the same, fits 80 columns and says how the command is called.
func TestHelp(t *testing.T) {
	t.Parallel()
	r := newRoom(t)
	usage, status := r.homerun("-h")
	if bare, again := r.homerun(); status != 0 || again != 0 || bare != usage {
		t.Errorf("without a command, exit statuses %d and %d:\n%s", status, again, bare)
	}
	commands := []string{"hook install", "hook run", "hook uninstall"}
	for _, line := range regexp.MustCompile(`(?m)^  ([a-z]+)  +\S`).FindAllStringSubmatch(usage, -1) {
		commands = append(commands, line[1])
	}
	for _, command := range append(commands, "") {
		words := strings.Fields(command)
		text, status := r.homerun(append(words, "-h")...)
		if other, again := r.homerun(append([]string{"help"}, words...)...); status != 0 || again != 0 || other != text {
			t.Errorf("%s: exit statuses %d and %d, help says\n%s\n-h says\n%s", command, status, again, other, text)
		}
		if call := "git homerun " + command; !strings.Contains(text, "\n  "+strings.TrimSpace(call)) {
			t.Errorf("%q does not say how it is called:\n%s", command, text)
		}
		for line := range strings.Lines(text) {
			if n := utf8.RuneCountInString(strings.TrimSuffix(line, "\n")); n > 80 {
				t.Errorf("%s: %d columns: %s", command, n, line)
			}
		}
	}
}

// TestVersion asks which program this is.
func TestVersion(t *testing.T) {
	t.Parallel()
	r := newRoom(t)
	if out, status := r.homerun("--version"); status != 0 || !strings.HasPrefix(out, "git homerun version ") || strings.Count(out, "\n") != 1 {
		t.Errorf("exit status %d:\n%s", status, out)
	}
}
