package cli_test

import (
	"bytes"
	"errors"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
)

// room is a folder with a git repository and the program, as a user has them.
type room struct {
	t       *testing.T
	dir     string
	program string
	env     []string
}

func newRoom(t *testing.T) *room {
	t.Helper()
	self, err := os.Executable()
	if err != nil {
		t.Fatal(err)
	}
	base := t.TempDir()
	program := filepath.Join(base, "git-homerun")
	content, err := os.ReadFile(self)
	if err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(program, content, 0o755); err != nil { //nolint:gosec // a program has to be executable
		t.Fatal(err)
	}
	r := &room{t: t, dir: filepath.Join(base, "pier"), program: program, env: []string{
		"PATH=" + base + string(os.PathListSeparator) + os.Getenv("PATH"), "HOME=" + base, "GIT_CONFIG_NOSYSTEM=1", "GIT_CONFIG_GLOBAL=" + os.DevNull,
		"GIT_CEILING_DIRECTORIES=" + base, "HOMERUN_TODAY=2026-03-02", "LC_ALL=C",
		"GIT_AUTHOR_NAME=Keeper", "GIT_AUTHOR_EMAIL=keeper@pier.example", "GIT_COMMITTER_NAME=Keeper", "GIT_COMMITTER_EMAIL=keeper@pier.example",
	}}
	r.mustGit(base, "init", "-q", "pier")
	r.write("plant.hcl", "plant \"pier\" {\n  standard = \"TIA-568\"\n}\n")
	return r
}

func (r *room) mustGit(dir string, args ...string) {
	r.t.Helper()
	cmd := exec.Command("git", args...)
	cmd.Dir, cmd.Env = dir, r.env
	if out, err := cmd.CombinedOutput(); err != nil {
		r.t.Fatalf("git %v: %v\n%s", args, err, out)
	}
}

func (r *room) write(name, text string) {
	r.t.Helper()
	path := filepath.Join(r.dir, name)
	if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
		r.t.Fatal(err)
	}
	if err := os.WriteFile(path, []byte(text), 0o644); err != nil {
		r.t.Fatal(err)
	}
}

// homerun runs the program in the repository and returns what it printed and
// its exit status.
func (r *room) homerun(args ...string) (out string, status int) {
	return r.as(nil, args...)
}

func (r *room) as(who *syscall.SysProcAttr, args ...string) (out string, status int) {
	r.t.Helper()
	cmd := exec.Command(r.program, args...)
	cmd.Dir, cmd.Env, cmd.SysProcAttr = r.dir, r.env, who
	var both bytes.Buffer
	cmd.Stdout, cmd.Stderr = &both, &both
	err := cmd.Run()
	var exit *exec.ExitError
	switch {
	case errors.As(err, &exit):
		return both.String(), exit.ExitCode()
	case err != nil:
		r.t.Fatal(err)
	}
	return both.String(), 0
}

// TestBadFiles writes one bad file a case beside a good one: the mistake is
// named at its place, the good file is still read, and nothing breaks.
func TestBadFiles(t *testing.T) {
	t.Parallel()
	const space = "space \"1A\" {\n  kind = \"telecommunications-room\"\n}\n"
	for _, c := range []struct{ name, text, want string }{
		{"not UTF-8", "space \"1B\" {\n  kind  = \"corridor\"\n  title = \"Flur \x96 Ost\"\n}\n", "bad.hcl:3:"},
		{"NUL bytes", "space \"1B\" {\n  kind  = \"corridor\"\n  title = \"a\x00b\"\n}\n", "bad.hcl:3:"},
		{"UTF-16", "s\x00p\x00a\x00c\x00e\x00", "bad.hcl:1:"},
		{"nested brackets", "space \"1B\" {\n  title = " + strings.Repeat("[", 100_000) + strings.Repeat("]", 100_000) + "\n}\n", "bad.hcl:"},
		{"nested parentheses", strings.Repeat("(", 100_000), "bad.hcl:1:"},
		{"nested blocks", strings.Repeat("b {\n", 200_000), "bad.hcl:"},
		{"heredoc", "space \"1B\" {\n  note = <<EOT\n" + strings.Repeat("twenty bytes of text\n", 32_000) + "EOT\n}\n", "bad.hcl:2:"},
		{"enormous number", "rack \"K\" {\n  space = \"1A\"\n  units = 1e99999999\n}\n", "1e99999999 is not a whole number"},
		{"merge markers", "<<<<<<< ours\nspace \"1B\" {\n  kind = \"corridor\"\n}\n=======\nspace \"1C\" {\n  kind = \"corridor\"\n}\n>>>>>>> theirs\n", "unresolved merge conflict"},
		{"an expression", "space \"1B\" {\n  kind = [for a in [1] : a]\n}\n", "bad.hcl:2:10:"},
		{"200 MB", strings.Repeat("# a long comment, repeated until the file is large\n", 4_200_000), "is larger than 16 MiB"},
		{"a label with a newline", "space \"1\\nB\" {\n  kind = \"corridor\"\n}\n", `label "1\nB" holds a character that can not be printed`},
		{"a label with an escape sequence", "space \"1\\u001b[31mB\" {\n  kind = \"corridor\"\n}\n", `holds a character that can not`},
		{"many mistakes", "space \"1B\" {\n" + strings.Repeat("  kind = = \"x\"\n", 32_000) + "}\n", "bad.hcl:1:1:"},
	} {
		t.Run(c.name, func(t *testing.T) {
			t.Parallel()
			r := newRoom(t)
			r.write("bad.hcl", c.text)
			r.write("good.hcl", strings.Replace(space, "kind", "kidn", 1))
			out, status := r.homerun("lint")
			flat := strings.Join(strings.Fields(out), " ")
			if status != 1 || !strings.Contains(flat, c.want) || !strings.Contains(flat, "did you mean kind?") {
				t.Errorf("exit status %d, want 1, %q and the other file's mistake:\n%.2000s", status, c.want, out)
			}
			if strings.ContainsAny(out, "\x00\x1b") || strings.Contains(out, "panic") || strings.Contains(out, "goroutine") {
				t.Errorf("unsafe or unkind output:\n%.2000s", out)
			}
			if len(out) > 1<<20 {
				t.Errorf("%d bytes of output", len(out))
			}
		})
	}
}

// TestGoodFiles holds what Windows and old editors leave in files to being
// read like any other text.
func TestGoodFiles(t *testing.T) {
	t.Parallel()
	const space = "space \"1A\" {\n  kind = \"telecommunications-room\"\n}\n"
	for name, text := range map[string]string{
		"byte order mark": "\ufeff" + space,
		"CRLF":            strings.ReplaceAll(space, "\n", "\r\n"),
		"both":            "\ufeff" + strings.ReplaceAll(space, "\n", "\r\n"),
		"no last newline": strings.TrimSuffix(space, "\n"),
		"empty":           "",
	} {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			r := newRoom(t)
			r.write("good.hcl", text)
			if out, status := r.homerun("lint"); status != 0 {
				t.Errorf("exit status %d:\n%s", status, out)
			}
		})
	}
}

// TestLinksAreNotFollowed puts a link that leaves the plant among the records.
func TestLinksAreNotFollowed(t *testing.T) {
	t.Parallel()
	r := newRoom(t)
	outside := filepath.Join(t.TempDir(), "secret.hcl")
	if err := os.WriteFile(outside, []byte("space \"SECRET\" {\n}\n"), 0o600); err != nil {
		t.Fatal(err)
	}
	if err := os.Symlink(outside, filepath.Join(r.dir, "link.hcl")); err != nil {
		t.Skip("this system makes no symbolic links: " + err.Error())
	}
	for _, args := range [][]string{{"lint"}, {"lint", "--staged"}} {
		r.mustGit(r.dir, "add", ".")
		out, status := r.homerun(args...)
		if status != 1 || !strings.Contains(out, "link.hcl:1:1:") || strings.Contains(out, "SECRET") {
			t.Errorf("%v: exit status %d:\n%s", args, status, out)
		}
	}
}
