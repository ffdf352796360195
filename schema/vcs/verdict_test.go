package vcs_test

import (
	"bytes"
	"errors"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"homerun/schema/vcs"
)

// signers makes real keys and signs with them.
type signers struct {
	*repo
	home, dir string
}

func newSigners(t *testing.T) *signers {
	t.Helper()
	for _, program := range []string{"gpg", "ssh-keygen"} {
		if _, err := exec.LookPath(program); err != nil {
			t.Skipf("%s is not installed", program)
		}
	}
	// The sockets of gpg-agent want a short path.
	home, err := os.MkdirTemp("", "gpg-*") //nolint:usetesting // its folder has too long a path for a socket
	check(t, err)
	s := &signers{repo: plant(t), home: home, dir: t.TempDir()}
	t.Cleanup(func() {
		stop := exec.Command("gpgconf", "--homedir", home, "--kill", "all")
		_ = stop.Run() // an agent that is not there needs no end
		check(t, os.RemoveAll(home))
	})
	return s
}

func (s *signers) run(name string, args ...string) string {
	s.t.Helper()
	cmd := exec.Command(name, args...)
	cmd.Env = append(os.Environ(), "GNUPGHOME="+s.home)
	out, err := cmd.Output()
	if err != nil {
		if exit, ok := errors.AsType[*exec.ExitError](err); ok {
			s.t.Fatalf("%s %v: %v\n%s", name, args, err, exit.Stderr)
		}
		s.t.Fatalf("%s %v: %v", name, args, err)
	}
	return string(out)
}

// keyMade is when the keys were made, as gpg writes a time that stands still.
const keyMade = "20190101T000000!"

// key makes an OpenPGP key that lasts so long, and returns its name.
func (s *signers) key(name, lasts string) string {
	s.t.Helper()
	s.run("gpg", "--batch", "--quiet", "--passphrase", "", "--faked-system-time", keyMade, "--quick-generate-key", name+" <"+name+"@pier.example>", "ed25519", "sign", lasts)
	return name + "@pier.example"
}

func (s *signers) export(file string, names ...string) string {
	s.t.Helper()
	path := filepath.Join(s.dir, file)
	check(s.t, os.WriteFile(path, []byte(s.run("gpg", append([]string{"--batch", "--armor", "--export"}, names...)...)), 0o600))
	return path
}

// text is a commit without a signature.
func (s *signers) text(message string) string {
	const who = " Keeper <keeper@pier.example> 1551600000 +0100\n"
	return "tree " + s.ask("rev-parse", "HEAD^{tree}") + "\nauthor" + who + "committer" + who + "\n" + message + "\n"
}

// sealed stores a commit with a signature in its headers.
func (s *signers) sealed(text, signature string) string {
	head, message, _ := strings.Cut(text, "\n\n")
	return s.store(head + "\ngpgsig " + strings.ReplaceAll(strings.TrimRight(signature, "\n"), "\n", "\n ") + "\n\n" + message)
}

// byPGP signs as of a time.
func (s *signers) byPGP(text, name, when string) string {
	s.t.Helper()
	cmd := exec.Command("gpg", "--batch", "--quiet", "--armor", "--faked-system-time", when, "--local-user", name, "--detach-sign")
	cmd.Env, cmd.Stdin = append(os.Environ(), "GNUPGHOME="+s.home), strings.NewReader(text)
	out, err := cmd.Output()
	check(s.t, err)
	return s.sealed(text, string(out))
}

// sshKey makes an SSH key and returns its file and a line of allowed signers.
func (s *signers) sshKey(name, options string) (file, line string) {
	s.t.Helper()
	file = filepath.Join(s.dir, name)
	s.run("ssh-keygen", "-q", "-t", "ed25519", "-N", "", "-C", name, "-f", file)
	public, err := os.ReadFile(file + ".pub")
	check(s.t, err)
	return file, strings.TrimSpace(name+"@pier.example "+options) + " " + string(public)
}

func (s *signers) bySSH(text, file string) string {
	s.t.Helper()
	cmd := exec.Command("ssh-keygen", "-Y", "sign", "-q", "-n", "git", "-f", file)
	cmd.Stdin = strings.NewReader(text)
	out, err := cmd.Output()
	check(s.t, err)
	return s.sealed(text, string(out))
}

// verdicts reads the commits and checks them against files of keys.
func (s *signers) verdicts(ids []string, files ...string) map[string]vcs.Verdict {
	s.t.Helper()
	keys, err := vcs.OpenKeys(s.t.Context(), files...)
	check(s.t, err)
	defer func() { check(s.t, keys.Close()) }()
	opened := s.open(vcs.ReaderAuto)
	var commits []vcs.Commit
	for _, id := range ids {
		c, failed := opened.Resolve(s.t.Context(), id)
		check(s.t, failed)
		commits = append(commits, c)
	}
	got, err := opened.Verdicts(s.t.Context(), commits, keys)
	check(s.t, err)
	return got
}

func TestVerdictsOnRealSignatures(t *testing.T) {
	t.Parallel()
	s := newSigners(t)
	const then, later = "20190303T080000!", "20200601T080000!"
	good, short := s.key("good", "never"), s.key("short", "1y")
	stranger, gone := s.key("stranger", "never"), s.key("gone", "never")
	text := s.text("move 1A-A07")
	goneID := s.byPGP(text, gone, then)
	s.revoke(gone)
	pgp := s.export("keys.asc", good, short, gone)

	file, line := s.sshKey("ada", "")
	lateFile, lateLine := s.sshKey("ben", `valid-before="20190101"`)
	strangeFile, _ := s.sshKey("cy", "")
	allowed := filepath.Join(s.dir, "allowed")
	check(t, os.WriteFile(allowed, []byte("# who may sign\n"+line+lateLine), 0o600))

	want := map[string]struct {
		id      string
		verdict vcs.Verdict
	}{
		"unsigned":                 {s.store(text), vcs.VerdictNone},
		"good":                     {s.byPGP(text, good, then), vcs.VerdictGood},
		"key ran out since":        {s.byPGP(text, short, then), vcs.VerdictGood},
		"key had run out":          {s.expired(text, short, later), vcs.VerdictExpired},
		"a stranger's":             {s.byPGP(text, stranger, then), vcs.VerdictUnknownKey},
		"revoked":                  {goneID, vcs.VerdictRevoked},
		"tampered":                 {s.tampered(s.byPGP(text, good, then)), vcs.VerdictBad},
		"SSH, good":                {s.bySSH(text, file), vcs.VerdictGood},
		"SSH, not allowed so late": {s.bySSH(text, lateFile), vcs.VerdictExpired},
		"SSH, a stranger's":        {s.bySSH(text, strangeFile), vcs.VerdictUnknownKey},
		"SSH, tampered":            {s.tampered(s.bySSH(text, file)), vcs.VerdictBad},
		"of another form":          {s.sealed(text, "-----BEGIN SIGNED MESSAGE-----\nabc\n-----END SIGNED MESSAGE-----\n"), vcs.VerdictUnchecked},
	}
	var ids []string
	for _, w := range want {
		ids = append(ids, w.id)
	}
	got := s.verdicts(ids, pgp, allowed)
	for name, w := range want {
		if got[w.id] != w.verdict {
			t.Errorf("%s: verdict %d, want %d; git says %q", name, got[w.id], w.verdict, s.ask("log", "-1", "--format=%G?", w.id))
		}
	}
	only := s.verdicts(ids, allowed)
	if only[want["good"].id] != vcs.VerdictUnchecked || only[want["SSH, good"].id] != vcs.VerdictGood {
		t.Error("without OpenPGP keys, their signatures are not checked")
	}
}

// expired signs with a key that had run out by then: its life is made longer for
// the moment, which is not exported.
func (s *signers) expired(text, name, when string) string {
	s.t.Helper()
	fingerprint := strings.Split(s.run("gpg", "--batch", "--with-colons", "--list-keys", name), "fpr:::::::::")[1]
	fingerprint, _, _ = strings.Cut(fingerprint, ":")
	before := s.run("gpg", "--batch", "--armor", "--export", name)
	s.run("gpg", "--batch", "--quiet", "--passphrase", "", "--faked-system-time", "20190102T000000!", "--quick-set-expire", fingerprint, "9y")
	id := s.byPGP(text, name, when)
	s.run("gpg", "--batch", "--yes", "--delete-secret-and-public-key", fingerprint)
	load := exec.Command("gpg", "--batch", "--quiet", "--import")
	load.Env, load.Stdin = append(os.Environ(), "GNUPGHOME="+s.home), strings.NewReader(before)
	check(s.t, load.Run())
	return id
}

func (s *signers) revoke(name string) {
	s.t.Helper()
	list := s.run("gpg", "--batch", "--with-colons", "--list-keys", name)
	fingerprint, _, _ := strings.Cut(strings.Split(list, "fpr:::::::::")[1], ":")
	cert, err := os.ReadFile(filepath.Join(s.home, "openpgp-revocs.d", fingerprint+".rev"))
	check(s.t, err)
	load := exec.Command("gpg", "--batch", "--quiet", "--import")
	load.Env = append(os.Environ(), "GNUPGHOME="+s.home)
	load.Stdin = bytes.NewReader(bytes.ReplaceAll(cert, []byte(":-----BEGIN"), []byte("-----BEGIN")))
	check(s.t, load.Run())
}

// tampered is the same commit with another message under the same signature.
func (s *signers) tampered(id string) string {
	s.t.Helper()
	return s.store(strings.Replace(s.git("cat-file", "commit", id), "move 1A-A07", "move 1A-A08", 1))
}

func TestKeysThatAreNone(t *testing.T) {
	t.Parallel()
	file := filepath.Join(t.TempDir(), "keys")
	for name, text := range map[string]string{"empty": "", "words": "good morning\n", "no key": "ada@pier.example ssh-ed25519 !!!\n"} {
		check(t, os.WriteFile(file, []byte(text), 0o600))
		if keys, err := vcs.OpenKeys(t.Context(), file); !errors.Is(err, vcs.ErrKeys) || keys != nil {
			t.Errorf("%s: %v", name, err)
		}
	}
	if _, err := vcs.OpenKeys(t.Context(), file+"-not-there"); !errors.Is(err, os.ErrNotExist) {
		t.Errorf("a file that is not there: %v", err)
	}
}

// TestNoProgramOfTheRepositoryChecks holds that a repository can not name what is started.
func TestNoProgramOfTheRepositoryChecks(t *testing.T) {
	t.Parallel()
	s := newSigners(t)
	text := s.text("move 1A-A07")
	name := s.key("good", "never")
	file, line := s.sshKey("ada", "")
	ids := []string{s.byPGP(text, name, "20190303T080000!"), s.bySSH(text, file)}
	trap := filepath.Join(s.dir, "trap")
	ran := filepath.Join(s.dir, "ran")
	check(t, os.WriteFile(trap, []byte("#!/bin/sh\necho >"+ran+"\nexit 1\n"), 0o755)) //nolint:gosec // a program has to be executable
	for _, setting := range []string{"gpg.program", "gpg.openpgp.program", "gpg.ssh.program", "gpg.ssh.defaultKeyCommand"} {
		s.git("config", setting, trap)
	}
	allowed := filepath.Join(s.dir, "allowed")
	check(t, os.WriteFile(allowed, []byte(line), 0o600))
	got := s.verdicts(ids, s.export("keys.asc", name), allowed)
	for _, id := range ids {
		if got[id] != vcs.VerdictGood {
			t.Errorf("verdict %d", got[id])
		}
	}
	if _, err := os.Stat(ran); err == nil {
		t.Error("a program that the repository names was started")
	}
}
