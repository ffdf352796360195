package cli_test

import (
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
)

// statusRoom is a repository where everything can be asked: a plant with a change
// that can be executed, on it a branch with one that can not, and a fault.
func statusRoom(t *testing.T) *room {
	t.Helper()
	r := newRoom(t)
	r.write("rooms.hcl", "space \"1A\" {\n  kind = \"telecommunications-room\"\n}\n\npanel \"1A-A\" {\n  space    = \"1A\"\n  ports    = 24\n  category = \"6A\"\n}\n\ncable \"c6a\" {\n  category = \"6A\"\n  screen   = \"U/UTP\"\n}\n\noutlet \"1.1\" {\n  space    = \"1A\"\n  ports    = 2\n  category = \"6A\"\n}\n")
	r.mustGit(r.dir, "add", ".")
	r.mustGit(r.dir, "commit", "-qm", "rooms")
	r.mustGit(r.dir, "tag", "rooms")
	r.write("runs.hcl", "run \"1A-A01\" {\n  cable  = \"c6a\"\n  from   = \"1A-A:01\"\n  to     = \"1.1:1\"\n  length = \"30 m\"\n}\n")
	r.mustGit(r.dir, "add", ".")
	r.mustGit(r.dir, "commit", "-qm", "a run")
	r.mustGit(r.dir, "tag", "run")
	r.write("more.hcl", "run \"1A-A02\" {\n  cable  = \"c6a\"\n  from   = \"1A-A:01\"\n  to     = \"1.1:1\"\n  length = \"30 m\"\n}\n")
	r.mustGit(r.dir, "add", ".")
	r.mustGit(r.dir, "commit", "-qm", "the same port twice")
	r.mustGit(r.dir, "tag", "twice")
	r.mustGit(r.dir, "rm", "-q", "more.hcl")
	r.mustGit(r.dir, "commit", "-qm", "taken out again")
	return r
}

// TestExitStatuses asks every command for every status that it has. A column is
// a status, a cell the words of a command line that ends with it.
func TestExitStatuses(t *testing.T) {
	t.Parallel()
	r := statusRoom(t)
	r.write("ours/file", "no folder")
	if out, status := r.homerun("audit", "--bundle", "../evidence"); status != 0 {
		t.Fatalf("no evidence, exit status %d:\n%s", status, out)
	}
	r.write("false", "no evidence")
	r.write("run.csv", "label,length\n1A-A01,30 m\n")
	r.write("empty.csv", "label,length\n")
	table := []struct {
		command                 string
		clean, objected, failed string
	}{
		{"audit", "audit", "audit --verify false", "audit --bundle missing/evidence"},
		{"completion", "completion bash", "", ""},
		{"demo", "demo --dir ../made", "", "demo --dir missing/made"},
		{"diff-driver", "diff-driver runs.hcl", "", "diff-driver missing.hcl"},
		{"explain", "explain run", "", ""},
		{"export", "export --kind run --format csv", "", "export --kind run --at missing --format csv"},
		{"fmt", "fmt --check", "", ""},
		{"help", "help lint", "", ""},
		{"history", "history 1A-A01", "", "history 1A-A01 --at missing"},
		{"hook", "hook run pre-commit", "", ""},
		{"import", "import run.csv", "import run.csv --fill length=x --fill label={label} --kind run", "import empty.csv --kind run"},
		{"init", "", "", ""},
		{"labels", "labels rooms..run --output ../labels.pdf", "", "labels --output missing/labels.pdf"},
		{"lint", "lint", "lint --at twice", "lint --at missing"},
		{"man", "man ../pages", "", "man ours/file/below"},
		{"order", "order rooms..run", "order run..twice", "order missing..run"},
		{"ready", "ready 10GBASE-T", "", "ready 10GBASE-SR"},
		{"setup", "", "setup --check", ""},
		{"takeoff", "takeoff", "", "takeoff --at missing"},
		{"trace", "trace 1A-A:01", "", "trace 1A-A:01 --at missing"},
	}
	told := make(map[string]bool)
	for _, c := range table {
		told[c.command] = true
		for status, line := range []string{c.clean, c.objected, c.command + " --no-such-option", c.failed} {
			if line == "" {
				continue
			}
			t.Run(fmt.Sprintf("%s is %d", line, status), func(t *testing.T) {
				t.Parallel()
				if out, got := r.homerun(strings.Fields(line)...); got != status {
					t.Errorf("exit status %d, want %d:\n%.600s", got, status, out)
				}
			})
		}
	}
	usage, _ := r.homerun("-h")
	for _, line := range regexp.MustCompile(`(?m)^  ([a-z]+)  +\S`).FindAllStringSubmatch(usage, -1) {
		if !told[line[1]] {
			t.Errorf("nothing holds the exit statuses of %s", line[1])
		}
	}
}

// TestFailuresOfTheEnvironment runs every command where it can not do its job:
// outside of a repository, without git, without a plant, on a full disk.
func TestFailuresOfTheEnvironment(t *testing.T) {
	t.Parallel()
	r := statusRoom(t)
	bare := newRoom(t)
	if err := os.Remove(filepath.Join(bare.dir, "plant.hcl")); err != nil {
		t.Fatal(err)
	}
	outside := *r
	outside.dir = filepath.Dir(r.dir)
	alone := *r
	alone.env = slices.Concat(r.env, []string{"PATH=" + t.TempDir()})
	asking := []string{"lint", "order rooms..run", "labels", "history 1A-A01", "audit", "trace 1A-A:01", "ready 10GBASE-T", "takeoff", "export --kind run --format csv", "import run.csv", "fmt"}
	for name, where := range map[string]*room{"outside": &outside, "no git": &alone, "no plant": bare} {
		for _, line := range asking {
			if out, status := where.homerun(strings.Fields(line)...); status != 3 || !strings.HasPrefix(out, "git homerun: ") {
				t.Errorf("%s: %s: exit status %d, want 3:\n%.600s", name, line, status, out)
			}
		}
	}
	full, err := os.OpenFile("/dev/full", os.O_WRONLY, 0)
	if err != nil {
		t.Skip("this system has no full disk to write to: " + err.Error())
	}
	defer func() { _ = full.Close() }()
	for _, line := range append(asking[:8:8], "explain", "explain run", "completion bash", "-h", "help lint", "lint --format sarif", "man ../pages", "demo --dir ../made") {
		if strings.HasPrefix(line, "labels") {
			line += " --output -"
		}
		cmd := exec.Command(r.program, strings.Fields(line)...)
		cmd.Dir, cmd.Env, cmd.Stdout = r.dir, r.env, full
		if _ = cmd.Run(); cmd.ProcessState.ExitCode() != 3 {
			t.Errorf("on a full disk, %s: exit status %d, want 3", line, cmd.ProcessState.ExitCode())
		}
	}
	if _, err := os.Stat(filepath.Join(filepath.Dir(r.dir), "made")); err == nil {
		t.Error("a demo that could not be told has left its folder")
	}
}

// TestExitStatusesAreDocumented compares what help, manual and README say.
func TestExitStatusesAreDocumented(t *testing.T) {
	t.Parallel()
	page, err := os.ReadFile(readme)
	if err != nil {
		t.Fatal(err)
	}
	r := newRoom(t)
	flat := func(text string) string { return strings.Join(strings.Fields(text), " ") }
	usage, _ := r.homerun("-h")
	_, usage, _ = strings.Cut(usage, "exit status:")
	if out, status := r.homerun("man", "pages"); status != 0 {
		t.Fatal(out)
	}
	manual, err := os.ReadFile(filepath.Join(r.dir, "pages", "git-homerun.1"))
	if err != nil {
		t.Fatal(err)
	}
	plain := flat(strings.NewReplacer(`\-`, "-", ".TP\n.B ", "").Replace(string(manual)))
	rows := regexp.MustCompile(`(?m)^\| (\d+) \| (.*) \|$`).FindAllStringSubmatch(string(page), -1)
	if len(rows) != 5 {
		t.Fatalf("the README tells %d exit statuses", len(rows))
	}
	for _, row := range rows {
		if want := row[1] + " " + row[2]; !strings.Contains(flat(usage), want) || !strings.Contains(plain, want) {
			t.Errorf("help or manual does not say %q", want)
		}
	}
}
