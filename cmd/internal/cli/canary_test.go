//go:build unix

package cli_test

import (
	"bytes"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"homerun/examples"
)

// A canary is a program that a repository names, and that tells when it is run.
type canary struct{ program, ran string }

func newCanary(t *testing.T) canary {
	t.Helper()
	dir := t.TempDir()
	c := canary{filepath.Join(dir, "canary"), filepath.Join(dir, "ran")}
	text := fmt.Sprintf("#!/bin/sh\necho \"$0 $*\" >>%q\nexit 1\n", c.ran)
	if err := os.WriteFile(c.program, []byte(text), 0o755); err != nil { //nolint:gosec // a program has to be executable
		t.Fatal(err)
	}
	return c
}

// sung is what was run since it was last asked.
func (c canary) sung(t *testing.T) string {
	t.Helper()
	text, err := os.ReadFile(c.ran)
	if err != nil {
		return ""
	}
	if err := os.Remove(c.ran); err != nil {
		t.Fatal(err)
	}
	return string(text)
}

// named are the settings of git that name a program, or a way to one, as
// git-config(1), gitattributes(5), githooks(5) and git-interpret-trailers(1) list
// them.
func (c canary) named() []string {
	keys := []string{
		"core.fsmonitor", "core.sshCommand", "core.editor", "core.pager", "core.askPass", "core.gitProxy", "core.alternateRefsCommand",
		"sequence.editor", "diff.external", "diff.own.command", "diff.own.textconv", "merge.own.driver",
		"filter.own.clean", "filter.own.smudge", "filter.own.process", "gpg.program", "gpg.openpgp.program", "gpg.ssh.program", "gpg.x509.program",
		"gpg.ssh.defaultKeyCommand", "credential.helper", "interactive.diffFilter", "pager.log", "pager.diff", "pager.config", "pager.homerun", "pager.branch",
		"trailer.order.command", "trailer.order.cmd", "trailer.signed.command", "trailer.signed.cmd", "remote.origin.uploadpack", "remote.origin.receivepack",
		"uploadpack.packObjectsHook", "browser.own.cmd", "man.own.cmd", "difftool.own.cmd", "mergetool.own.cmd", "submodule.own.update", "hook.own.command",
	}
	settings := make([]string, 0, len(keys)+len(keys)/2)
	for _, key := range keys {
		settings = append(settings, key+"="+c.program)
	}
	return append(settings, "hook.own.event=pre-commit", "log.showSignature=true", "commit.gpgSign=true", "tag.gpgSign=true", "trailer.signed.key=Signed",
		"remote.origin.url=ext::"+c.program, "remote.origin.vcs=own", "protocol.ext.allow=always", "core.splitIndex=true", "core.untrackedCache=true",
		"filter.own.required=true", "diff.submodule=diff", "status.submoduleSummary=true", "alias.homerun=!"+c.program)
}

// cage makes the repository: records with a history, a signed commit, attributes
// that name the programs, and every hook of git. The last thing is the settings,
// so that nothing sings before a test listens.
func (c canary) cage(t *testing.T) *room {
	t.Helper()
	r := newRoom(t)
	commits, err := examples.Story()
	if err != nil {
		t.Fatal(err)
	}
	states, err := examples.States(commits)
	if err != nil {
		t.Fatal(err)
	}
	for i, at := range []int{0, len(states) - 1} {
		for name, text := range states[at].Files {
			r.write(name, text)
		}
		r.write(".gitattributes", "* filter=own diff=own merge=own ident\n")
		r.mustGit(r.dir, "add", ".")
		r.mustGit(r.dir, "commit", "-qm", fmt.Sprint("state ", i))
	}
	r.mustGit(r.dir, "update-ref", "HEAD", r.signed())
	r.write("staged.hcl", "space \"9Z\" {\n    kind = \"corridor\"\n}\n")
	r.mustGit(r.dir, "add", "staged.hcl")
	hooks := filepath.Join(r.dir, ".git", "hooks")
	for _, name := range []string{
		"applypatch-msg", "pre-applypatch", "post-applypatch", "pre-commit", "pre-merge-commit", "prepare-commit-msg", "commit-msg", "post-commit", "pre-rebase",
		"post-checkout", "post-merge", "pre-push", "pre-receive", "update", "proc-receive", "post-receive", "post-update", "reference-transaction",
		"push-to-checkout", "pre-auto-gc", "post-rewrite", "fsmonitor-watchman", "post-index-change",
	} {
		if err := os.Symlink(c.program, filepath.Join(hooks, name)); err != nil {
			t.Fatal(err)
		}
	}
	for _, setting := range c.named() {
		key, value, _ := strings.Cut(setting, "=")
		r.mustGit(r.dir, "config", "--add", key, value)
	}
	return r
}

// signed stores a commit that says to be signed, and returns its id.
func (r *room) signed() string {
	r.t.Helper()
	text := func(stdin string, args ...string) string {
		cmd := exec.Command("git", args...)
		cmd.Dir, cmd.Env, cmd.Stdin = r.dir, r.env, strings.NewReader(stdin)
		out, err := cmd.Output()
		if err != nil {
			r.t.Fatalf("git %v: %v", args, err)
		}
		return strings.TrimSpace(string(out))
	}
	const who = " Keeper <keeper@pier.example> 1772000000 +0000\n"
	return text("tree "+text("", "rev-parse", "HEAD^{tree}")+"\nparent "+text("", "rev-parse", "HEAD")+"\nauthor"+who+"committer"+who+
		"gpgsig -----BEGIN SSH SIGNATURE-----\n AAAA\n -----END SSH SIGNATURE-----\n\nsigned\n", "hash-object", "-t", "commit", "-w", "--literally", "--stdin")
}

// hears runs the program and names every canary that sang.
func (r *room) hears(c canary, stdin string, args ...string) {
	r.t.Helper()
	cmd := exec.Command(r.program, args...)
	cmd.Dir, cmd.Env, cmd.Stdin = r.dir, r.env, strings.NewReader(stdin)
	var said bytes.Buffer
	cmd.Stdout, cmd.Stderr = &said, &said
	err := cmd.Run()
	if code := cmd.ProcessState.ExitCode(); code < 0 || code > 3 {
		r.t.Errorf("%v: %v: %s", args, err, said.String())
	}
	if sung := c.sung(r.t); sung != "" {
		r.t.Errorf("%v started:\n%s", args, sung)
	}
}

// everyCommand is each way into the program, with what git tells it. None of them
// is a command of git that would run hooks by itself.
func everyCommand() [][2]string {
	const head = "HEAD"
	return [][2]string{
		{"lint"},
		{"lint --staged"},
		{"lint --hook"},
		{"lint --at HEAD"},
		{"lint --since HEAD~1 --format sarif -o report.sarif"},
		{"explain run"},
		{"order HEAD~1..HEAD"},
		{"order HEAD~2..HEAD --format html --output order.html"},
		{"labels --output labels.pdf"},
		{"history 1A-A01"},
		{"audit"},
		{"audit --keys keys"},
		{"audit --bundle audit.zip"},
		{"audit --verify audit.zip"},
		{"trace 1A-A:01"},
		{"ready"},
		{"takeoff"},
		{"export --output records.xlsx"},
		{"export cable-schedule --format csv"},
		{"import records.xlsx"},
		{"fmt --check"},
		{"fmt"},
		{"init"},
		{"hook run commit-msg message"},
		{"hook run pre-commit"},
		{"hook run pre-merge-commit"},
		{"hook run pre-push origin url", "refs/heads/master " + head + " refs/heads/new " + strings.Repeat("0", 40) + "\n"},
		{"hook run pre-receive", strings.Repeat("0", 40) + " " + head + " refs/heads/master\n"},
		{"hook run update refs/heads/master HEAD~1 HEAD"},
		{"merge-driver base ours theirs 7 runs.hcl"},
		{"diff-driver cables.hcl"},
		{"completion bash"},
		{"completion -- order "},
		{"man ."},
		{"demo --dir demo"},
		{"setup --check"},
		{"setup"},
		{"setup --trailer"},
		{"setup --check"},
		{"setup --remove"},
		{"hook install"},
		{"hook uninstall"},
	}
}

// TestCanary proves that no program which a repository names is run on our
// account: by no command, whatever it reads or writes.
func TestCanary(t *testing.T) {
	t.Parallel()
	c := newCanary(t)
	r := c.cage(t)
	r.write("message", "Longer cables\n\nSigned: nobody\n")
	r.write("keys", "keeper@pier.example ssh-ed25519 AAAAC3NzaC1lZDI1NTE5AAAAIJtWYHBJsj6xsPPKRTzLxc6OeUkLbSmhD8m8sQbAxvCp\n")
	for name, length := range map[string]string{"base": "1 m", "ours": "2 m", "theirs": "3 m"} {
		r.write(name, "run \"1A-A01\" {\n  length = \""+length+"\"\n}\n")
	}
	c.sung(t)
	for _, command := range everyCommand() {
		r.hears(c, command[1], strings.Fields(command[0])...)
	}
	// The canary does sing: git itself runs it.
	cmd := exec.Command("git", "status")
	cmd.Dir, cmd.Env = r.dir, r.env
	_ = cmd.Run()
	if c.sung(t) == "" {
		t.Error("nothing that the repository names can be run at all, so this proves nothing")
	}
}

// TestCanaryOfPartialClone proves that what a partial clone lacks is named and
// not fetched: the way to the other side is the repository's to choose.
func TestCanaryOfPartialClone(t *testing.T) {
	t.Parallel()
	c := newCanary(t)
	r := newRoom(t)
	r.write(".gitattributes", "*.hcl text\n")
	r.mustGit(r.dir, "add", ".")
	r.mustGit(r.dir, "commit", "-qm", "one")
	r.write("plant.hcl", "plant \"pier\" {\n  standard = \"ISO-11801\"\n}\n")
	r.mustGit(r.dir, "commit", "-qam", "two")
	r.mustGit(r.dir, "config", "uploadpack.allowFilter", "true")
	from := r.dir
	r.dir = filepath.Join(filepath.Dir(from), "partial")
	r.mustGit(from, "clone", "-q", "--no-checkout", "--filter=blob:none", "file://"+from, r.dir)
	r.mustGit(r.dir, "read-tree", "HEAD")
	r.write("plant.hcl", "plant \"pier\" {\n  standard = \"ISO-11801\"\n}\n")
	for _, setting := range c.named() {
		key, value, _ := strings.Cut(setting, "=")
		r.mustGit(r.dir, "config", "--replace-all", key, value)
	}
	for _, command := range everyCommand() {
		r.hears(c, command[1], strings.Fields(command[0])...)
	}
	for _, line := range []string{"lint --at HEAD~1", "lint --since HEAD~1", "lint --hook", "order HEAD~1..HEAD", "history pier", "audit"} {
		out, status := r.homerun(strings.Fields(line)...)
		if status != 3 || !strings.Contains(out, "could not fetch") || !strings.Contains(out, "git fetch --refetch") {
			t.Errorf("%s: exit status %d: %s", line, status, out)
		}
	}
	cmd := exec.Command("git", "cat-file", "-p", "HEAD~1:plant.hcl")
	cmd.Dir, cmd.Env = r.dir, r.env
	_ = cmd.Run()
	if c.sung(t) == "" {
		t.Error("git fetches nothing here by itself, so this proves nothing")
	}
}
