package vcs

import (
	"bytes"
	"context"
	"crypto/sha256"
	"encoding/base64"
	"errors"
	"fmt"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
)

// ErrNoVerifier is a program that checks signatures and is not installed.
var ErrNoVerifier = errors.New("the program that checks such signatures is not installed")

// ErrKeys is a file that holds no keys.
var ErrKeys = errors.New("no keys are in the file")

// mostKeys bounds a file of keys, in bytes.
const mostKeys = 16 << 20

// Keys are public keys that somebody trusts: OpenPGP keys, and SSH keys in the form of ssh-keygen's allowed signers.
// They lie in a folder of their own, and nobody's own keyring takes part.
type Keys struct {
	home         string
	openPGP, ssh bool
	// prints are the fingerprints of the SSH keys.
	prints map[string]bool
}

// OpenKeys reads files of keys, whatever their form. The caller must close them. Error: ErrKeys, with the file's
// name, for one that holds none, ErrNoVerifier where gpg is needed and missing.
func OpenKeys(ctx context.Context, files ...string) (*Keys, error) {
	home, err := os.MkdirTemp("", "homerun-*")
	if err != nil {
		return nil, fmt.Errorf("keys: %w", err)
	}
	k := &Keys{home: home, prints: make(map[string]bool)}
	for _, file := range files {
		if err := k.add(ctx, file); err != nil {
			return nil, errors.Join(err, k.Close())
		}
	}
	return k, nil
}

// Close takes the folder away.
func (k *Keys) Close() error { return os.RemoveAll(k.home) }

func (k *Keys) has(form SignatureForm) bool {
	return k != nil && (form == FormOpenPGP && k.openPGP || form == FormSSH && k.ssh)
}

func (k *Keys) add(ctx context.Context, file string) error {
	f, err := os.Open(file)
	if err != nil {
		return fmt.Errorf("keys: %w", err)
	}
	defer func() { _ = f.Close() }()
	data, err := io.ReadAll(io.LimitReader(f, mostKeys+1))
	switch {
	case err != nil:
		return fmt.Errorf("keys: %w", err)
	case len(data) > mostKeys:
		return fmt.Errorf("keys: %s: %d bytes: %w", file, len(data), ErrTooLarge)
	case len(data) > 0 && data[0] >= 0x80 || bytes.Contains(data, []byte("-----BEGIN PGP PUBLIC KEY BLOCK-----")):
		return k.addOpenPGP(ctx, file, data)
	}
	return k.addSSH(file, data)
}

// addOpenPGP imports the keys into a keyring of our own.
func (k *Keys) addOpenPGP(ctx context.Context, file string, data []byte) error {
	if err := k.verifier(FormOpenPGP); err != nil {
		return fmt.Errorf("keys: %s: %w", file, err)
	}
	load := exec.CommandContext(ctx, "gpg", "--batch", "--quiet", "--no-options", "--no-autostart", "--homedir", k.home, "--import")
	load.Stdin = bytes.NewReader(data)
	if said, err := load.CombinedOutput(); err != nil {
		return fmt.Errorf("keys: %s: %w: %s", file, ErrKeys, bytes.TrimSpace(said))
	}
	k.openPGP = true
	return nil
}

// addSSH adds lines of allowed signers.
func (k *Keys) addSSH(file string, data []byte) error {
	found := false
	for line := range bytes.Lines(data) {
		if p := sshPrint(string(line)); p != "" {
			k.prints[p], found = true, true
		}
	}
	if !found {
		return fmt.Errorf("keys: %s: %w", file, ErrKeys)
	}
	all, err := os.OpenFile(k.signers(), os.O_APPEND|os.O_CREATE|os.O_WRONLY, 0o600)
	if err != nil {
		return fmt.Errorf("keys: %w", err)
	}
	_, err = all.Write(append(bytes.TrimRight(data, "\n"), '\n'))
	k.ssh = true
	return errors.Join(err, all.Close())
}

func (k *Keys) signers() string { return filepath.Join(k.home, "signers") }

// sshPrint is the fingerprint of the key in a line of allowed signers (ssh-keygen(1), "ALLOWED SIGNERS"): principals,
// perhaps options, the kind of key, the key. It is empty for a line without one.
func sshPrint(line string) string {
	if strings.HasPrefix(strings.TrimSpace(line), "#") {
		return ""
	}
	fields := strings.Fields(line)
	for i := 1; i+1 < len(fields); i++ {
		kind := fields[i]
		if !strings.HasPrefix(kind, "ssh-") && !strings.HasPrefix(kind, "ecdsa-") && !strings.HasPrefix(kind, "sk-") {
			continue
		}
		if key, err := base64.StdEncoding.DecodeString(fields[i+1]); err == nil {
			sum := sha256.Sum256(key)
			return "SHA256:" + base64.RawStdEncoding.EncodeToString(sum[:])
		}
	}
	return ""
}

// verifier finds the program that checks signatures of a form.
func (k *Keys) verifier(form SignatureForm) error {
	program := "gpg"
	if form == FormSSH {
		program = "ssh-keygen"
	}
	if _, err := exec.LookPath(program); err != nil {
		return fmt.Errorf("%s: %w", program, ErrNoVerifier)
	}
	return nil
}

// settings override whatever a repository says about programs and keys.
func (k *Keys) settings() []string {
	return []string{
		"-c", "gpg.program=gpg", "-c", "gpg.openpgp.program=gpg", "-c", "gpg.ssh.program=ssh-keygen", "-c", "gpg.x509.program=false",
		"-c", "gpg.minTrustLevel=undefined", "-c", "gpg.ssh.allowedSignersFile=" + k.signers(), "-c", "gpg.ssh.revocationFile=", "-c", "gpg.ssh.defaultKeyCommand=",
	}
}
