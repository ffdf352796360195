package cli_test

import (
	"maps"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
)

// A signer signs commits of the room with real programs.
type signer struct {
	*room
	home, keys string
}

func newSigner(t *testing.T) *signer {
	t.Helper()
	for _, program := range []string{"gpg", "ssh-keygen"} {
		if _, err := exec.LookPath(program); err != nil {
			t.Skipf("%s is not installed", program)
		}
	}
	// The sockets of gpg's agent want a short path.
	home, err := os.MkdirTemp("", "gpg-*") //nolint:usetesting // its folder has too long a path for a socket
	if err != nil {
		t.Fatal(err)
	}
	s := &signer{newRoom(t), home, t.TempDir()}
	s.env = append(s.env, "GNUPGHOME="+home)
	t.Cleanup(func() {
		stop := exec.Command("gpgconf", "--homedir", home, "--kill", "all")
		_ = stop.Run() // an agent that is not there needs no end
		if err := os.RemoveAll(home); err != nil {
			t.Error(err)
		}
	})
	return s
}

// output runs a program with a text as its input.
func (s *signer) output(input, name string, args ...string) string {
	s.t.Helper()
	cmd := exec.Command(name, args...)
	cmd.Env, cmd.Stdin = s.env, strings.NewReader(input)
	out, err := cmd.Output()
	if err != nil {
		s.t.Fatalf("%s %v: %v", name, args, err)
	}
	return string(out)
}

const signedThen = "20240303T080000!"

func (s *signer) pgpKey(name string) {
	s.t.Helper()
	s.output("", "gpg", "--batch", "--quiet", "--passphrase", "", "--faked-system-time", "20240101T000000!", "--quick-generate-key", name+" <"+name+"@pier.example>", "ed25519", "sign", "never")
}

func (s *signer) byPGP(name string, options ...string) func(text string) string {
	return func(text string) string {
		args := append([]string{"--batch", "--quiet", "--armor", "--faked-system-time", signedThen, "--local-user", name + "@pier.example"}, options...)
		return s.output(text, "gpg", append(args, "--detach-sign")...)
	}
}

// sshKey makes a key and returns its line of allowed signers.
func (s *signer) sshKey(name, options string) string {
	s.t.Helper()
	file := filepath.Join(s.keys, name)
	s.output("", "ssh-keygen", "-q", "-t", "ed25519", "-N", "", "-f", file)
	public, err := os.ReadFile(file + ".pub")
	if err != nil {
		s.t.Fatal(err)
	}
	return strings.TrimSpace(name+"@pier.example "+options) + " " + string(public)
}

func (s *signer) bySSH(name string) func(text string) string {
	return func(text string) string {
		return s.output(text, "ssh-keygen", "-Y", "sign", "-q", "-n", "git", "-f", filepath.Join(s.keys, name))
	}
}

// commit adds a commit whose signature is of its text, or of another text where
// it is tampered with.
func (s *signer) commit(subject string, sign func(text string) string, signed func(text string) string) {
	s.t.Helper()
	const who = " Keeper <keeper@pier.example> 1709452800 +0000\n"
	head := "tree " + s.ask("rev-parse", "HEAD^{tree}") + "\nparent " + s.ask("rev-parse", "HEAD") + "\nauthor" + who + "committer" + who
	text := head + "\n" + subject + "\n"
	if sign != nil {
		signature := strings.TrimRight(sign(signed(text)), "\n")
		text = head + "gpgsig " + strings.ReplaceAll(signature, "\n", "\n ") + "\n\n" + subject + "\n"
	}
	s.mustGit(s.dir, "update-ref", "HEAD", s.stored("commit", text))
}

// TestRealSignatures signs with gpg and ssh-keygen, and holds what the report says
// of each commit against what was done to it, and the printed commands against it.
func TestRealSignatures(t *testing.T) {
	t.Parallel()
	s := newSigner(t)
	s.mustGit(s.dir, "add", ".")
	s.mustGit(s.dir, "commit", "-qm", "unsigned")
	s.pgpKey("known")
	s.pgpKey("stranger")
	allowed := s.sshKey("ada", "") + s.sshKey("late", `valid-before="20240101"`)
	s.sshKey("cy", "")
	whole := func(text string) string { return text }
	other := func(text string) string { return text + "more\n" }
	s.commit("PGP good", s.byPGP("known"), whole)
	s.commit("PGP stranger", s.byPGP("stranger"), whole)
	s.commit("PGP expired", s.byPGP("known", "--default-sig-expire", "1d"), whole)
	s.commit("PGP tampered", s.byPGP("known"), other)
	s.commit("SSH good", s.bySSH("ada"), whole)
	s.commit("SSH stranger", s.bySSH("cy"), whole)
	s.commit("SSH late", s.bySSH("late"), whole)
	s.commit("SSH tampered", s.bySSH("ada"), other)
	ring, signers := filepath.Join(s.keys, "ring.asc"), filepath.Join(s.keys, "allowed")
	for file, text := range map[string]string{ring: s.output("", "gpg", "--batch", "--armor", "--export", "known@pier.example"), signers: allowed} {
		if err := os.WriteFile(file, []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	told := s.audit("--keys", ring, "--keys", signers)
	got := map[string]string{}
	for _, d := range told.Doubtful {
		got[d.Subject] = d.Signature
	}
	want := map[string]string{
		"unsigned": "none", "PGP stranger": "unknown key", "PGP expired": "expired key", "PGP tampered": "bad",
		"SSH stranger": "unknown key", "SSH late": "expired key", "SSH tampered": "bad",
	}
	if !maps.Equal(got, want) {
		t.Errorf("told %v, want %v", got, want)
	}
	if told.Signatures["good"] != 2 {
		t.Errorf("two signatures are good, told %v", told.Signatures)
	}
	if bare := s.audit(); bare.Signatures["not checked"] != 8 || bare.Signatures["none"] != 1 {
		t.Errorf("without keys nothing is checked, told %v", bare.Signatures)
	}
	s.checkLetters(told, ring, signers)
	file := filepath.Join(s.keys, "evidence.zip")
	s.in(s.dir, 0, "audit", "--bundle", file, "--keys", ring, "--keys", signers)
	if said := s.in(s.dir, 0, "audit", "--verify", file); !strings.Contains(said, "everything holds") {
		t.Errorf("the keys are in the bundle: %s", said)
	}
}

// checkLetters runs the printed commands with the files of keys filled in.
func (s *signer) checkLetters(told auditTold, ring, signers string) {
	s.t.Helper()
	letters := func(figure, file string) map[string]int {
		count := map[string]int{}
		for line := range strings.Lines(s.typed(s.dir, strings.ReplaceAll(told.printed(s.t, figure), "FILE", file))) {
			count[strings.Fields(line)[1]]++
		}
		return count
	}
	empty, err := os.MkdirTemp("", "gpg-*")
	if err != nil {
		s.t.Fatal(err)
	}
	defer func() { _ = os.RemoveAll(empty) }()
	s.env = append(s.env, "GNUPGHOME="+empty)
	// See git-log(1), %G?. Of SSH, U is by no key that was allowed then.
	if got := letters("signatures", signers); got["N"] != told.Signatures["none"] || got["G"] != 1 || got["U"] != 2 || got["B"] != 1 {
		s.t.Errorf("by SSH, git says %v", got)
	}
	if got := letters("the same of OpenPGP", ring); got["U"] != 1 || got["X"] != 1 || got["B"] < 1 || got["E"] < 1 {
		s.t.Errorf("by OpenPGP, git says %v", got)
	}
}
