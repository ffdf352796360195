package cli_test

import (
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
)

// TestReadmeCommands runs every command that the README's table of commands
// shows, after its tour; and the table shows every command there is.
func TestReadmeCommands(t *testing.T) {
	t.Parallel()
	page, err := os.ReadFile(readme)
	if err != nil {
		t.Fatal(err)
	}
	r := newRoom(t)
	r.mustGit(r.dir, "checkout", "-q", "-B", "main")
	records := fenced(t, string(page), "```hcl\nspace \"1A\"", "```hcl\n")
	if err := os.Remove(filepath.Join(r.dir, "plant.hcl")); err != nil {
		t.Fatal(err)
	}
	if out, status := r.homerun("init", "north-pier"); status != 0 {
		t.Fatalf("exit status %d:\n%s", status, out)
	}
	r.mustGit(r.dir, "add", ".")
	r.mustGit(r.dir, "commit", "-qm", "the plant")
	r.mustGit(r.dir, "checkout", "-qb", "hall")
	r.write("hall.hcl", strings.Replace(records, "91.5 m", "61.5 m", 1))
	r.mustGit(r.dir, "add", ".")
	r.mustGit(r.dir, "commit", "-qm", "the hall, corrected")
	// A command stands in the table, in a block or in a sentence.
	text := strings.ReplaceAll(string(page), "`\n", "` ")
	shown := []string{"init", "demo", "man", "completion"}
	for _, m := range regexp.MustCompile("(?m)^\\| `git homerun ([^`]*)` \\|").FindAllStringSubmatch(text, -1) {
		line := m[1]
		words := strings.Fields(line)
		shown = append(shown, words[0])
		for i, word := range words {
			if word == "FILE" {
				words[i] = "../evidence"
			}
		}
		if out, status := r.homerun(words...); status != 0 || out == "" && words[0] != "fmt" && !slices.Contains(words, "--output") {
			t.Errorf("git homerun %s: exit status %d\n%.800s", line, status, out)
		}
	}
	usage, _ := r.homerun("-h")
	for _, line := range regexp.MustCompile(`(?m)^  ([a-z]+)  +\S`).FindAllStringSubmatch(usage, -1) {
		if !slices.Contains(shown, line[1]) || !strings.Contains(text, "git homerun "+line[1]) && !strings.Contains(text, "git-homerun "+line[1]) {
			t.Errorf("the README does not show git homerun %s", line[1])
		}
	}
}

// TestReadmeExamples tries what the README says to try in the second plant.
func TestReadmeExamples(t *testing.T) {
	t.Parallel()
	page, err := os.ReadFile(readme)
	if err != nil {
		t.Fatal(err)
	}
	_, section, _ := strings.Cut(string(page), "\n## Two plants to read\n")
	lines := strings.Split(strings.TrimSpace(fenced(t, section, "```\n", "```\n")), "\n")
	r := newRoom(t)
	if err := os.CopyFS(filepath.Join(r.dir, "examples"), os.DirFS("../../../examples")); err != nil {
		t.Fatal(err)
	}
	court := *r
	court.dir = filepath.Join(r.dir, "examples", "granary-court")
	for _, line := range lines {
		words, ours := strings.CutPrefix(line, "git homerun ")
		if !ours {
			t.Fatalf("not a command of ours: %q", line)
		}
		if out, status := court.homerun(strings.Fields(words)...); status != 0 || out == "" {
			t.Errorf("%s: exit status %d\n%.800s", line, status, out)
		}
	}
	if len(lines) < 2 {
		t.Errorf("only %q", lines)
	}
}

// TestReadmeSettings compares the settings that the README and the manual name.
func TestReadmeSettings(t *testing.T) {
	t.Parallel()
	page, err := os.ReadFile(readme)
	if err != nil {
		t.Fatal(err)
	}
	r := newRoom(t)
	if out, status := r.homerun("man", "pages"); status != 0 {
		t.Fatal(out)
	}
	manual, err := os.ReadFile(filepath.Join(r.dir, "pages", "git-homerun.1"))
	if err != nil {
		t.Fatal(err)
	}
	_, table, _ := strings.Cut(string(page), "| `git config` | |\n")
	table, _, _ = strings.Cut(table, "\n\n")
	_, chapter, _ := strings.Cut(string(manual), ".SH CONFIGURATION\n")
	chapter, _, _ = strings.Cut(chapter, ".SH ")
	name := regexp.MustCompile(`\b(?:homerun\.[a-z]+|(?:color|pager)\.homerun)\b`)
	names := func(text string) []string {
		all := name.FindAllString(text, -1)
		slices.Sort(all)
		return slices.Compact(all)
	}
	if in, of := names(table), names(chapter); len(in) < 4 || !slices.Equal(in, of) {
		t.Errorf("the README names %v, the manual %v", in, of)
	}
}
