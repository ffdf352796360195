package vcs

import (
	"bufio"
	"bytes"
	"context"
	"errors"
	"fmt"
	"slices"
	"strconv"
	"strings"
)

// SignatureForm is the form of a commit's signature, by its first line.
type SignatureForm uint8

// The forms that git knows, and FormOther for anything else.
const (
	FormOther SignatureForm = iota
	FormOpenPGP
	FormSSH
)

func signatureForm(first string) SignatureForm {
	switch first {
	case "-----BEGIN PGP SIGNATURE-----", "-----BEGIN PGP MESSAGE-----":
		return FormOpenPGP
	case "-----BEGIN SSH SIGNATURE-----":
		return FormSSH
	}
	return FormOther
}

// Verdict says what a signature is worth, held against keys that somebody named.
type Verdict uint8

// The verdicts. VerdictUnchecked is a signature of a form for which no keys were named, or that is not checked at all.
const (
	VerdictUnchecked Verdict = iota
	VerdictNone
	VerdictGood
	VerdictBad
	VerdictUnknownKey
	// VerdictExpired is a signature that is right, by a key that had run out when it was made, or that has run out itself.
	VerdictExpired
	// VerdictRevoked is a signature that is right, by a key that its owner has withdrawn.
	VerdictRevoked
)

// Verdicts checks the signatures of commits, as Log gave them, against keys. Git and its helpers gpg and ssh-keygen
// do the checking; none that the repository's settings name is started. Error: ErrNoVerifier where a helper that is
// needed is not installed.
func (r *Repo) Verdicts(ctx context.Context, commits []Commit, keys *Keys) (map[string]Verdict, error) {
	verdicts := make(map[string]Verdict, len(commits))
	byForm := make(map[SignatureForm][]string)
	for _, c := range commits {
		switch {
		case !c.Signed:
			verdicts[c.ID] = VerdictNone
		case keys.has(c.SignedWith):
			byForm[c.SignedWith] = append(byForm[c.SignedWith], c.ID)
		default:
			verdicts[c.ID] = VerdictUnchecked
		}
	}
	for form, ids := range byForm {
		if err := r.check(ctx, keys, form, ids, verdicts); err != nil {
			return nil, fmt.Errorf("checking signatures: %w", err)
		}
	}
	return verdicts, nil
}

// check asks git about signatures of one form.
func (r *Repo) check(ctx context.Context, keys *Keys, form SignatureForm, ids []string, into map[string]Verdict) error {
	if err := keys.verifier(form); err != nil {
		return err
	}
	git := *r.git
	git.env = append(slices.Clip(git.env), "GNUPGHOME="+keys.home)
	args := append(keys.settings(), "log", "--no-walk=unsorted", "--stdin", "--no-show-signature", "--no-patch", "--no-decorate", "--no-color", "-z", "--format=%H %G? %GF")
	c, err := git.start(ctx, args...)
	if err != nil {
		return err
	}
	go feed(c.in, ids)
	tokens := nulTokens(c.out)
	var late []string
	for tokens.Scan() {
		f := strings.Fields(tokens.Text())
		if len(f) < 2 {
			c.stop()
			return fmt.Errorf("unexpected %.80q", tokens.Text())
		}
		v := keys.verdict(form, f[1], strings.Join(f[2:], ""))
		if v == VerdictExpired && form == FormOpenPGP {
			late = append(late, f[0])
		}
		into[f[0]] = v
	}
	if err := errors.Join(tokens.Err(), c.wait(ctx)); err != nil {
		return err
	}
	return keys.inTime(ctx, &git, late, into)
}

// verdict reads git's letter about a signature, see git-log(1), placeholder %G?.
func (k *Keys) verdict(form SignatureForm, letter, fingerprint string) Verdict {
	switch letter {
	case "G":
		return VerdictGood
	case "U":
		// Of OpenPGP: good, by a key that nobody has said to trust; here, naming it was that. Of SSH: right, but by no
		// key that was allowed to sign at the time.
		switch {
		case form == FormOpenPGP:
			return VerdictGood
		case k.prints[fingerprint]:
			return VerdictExpired
		}
		return VerdictUnknownKey
	case "X", "Y":
		return VerdictExpired
	case "R":
		return VerdictRevoked
	case "E":
		return VerdictUnknownKey
	}
	return VerdictBad
}

// inTime looks again at signatures by keys that have run out: those made before that are good.
func (k *Keys) inTime(ctx context.Context, git *runner, ids []string, into map[string]Verdict) error {
	for _, id := range ids {
		c, err := git.start(ctx, append(k.settings(), "verify-commit", "--raw", id)...)
		if err != nil {
			return err
		}
		_ = c.in.Close()
		for lines := bufio.NewScanner(c.out); lines.Scan(); {
			continue // what is asked for goes to standard error
		}
		err = c.wait(ctx)
		var refused *gitError
		if err != nil && !errors.As(err, &refused) {
			return err
		}
		if keyOutlived(c.said.Bytes()) {
			into[id] = VerdictGood
		}
	}
	return nil
}

// keyOutlived says whether the key ran out after the signature was made, by the status lines of gpg (doc/DETAILS of
// GnuPG): KEYEXPIRED with the time, VALIDSIG with that of the signature as its third word.
func keyOutlived(status []byte) bool {
	var expired, made int64
	for line := range bytes.Lines(status) {
		f := strings.Fields(strings.TrimPrefix(string(line), "[GNUPG:] "))
		switch {
		case len(f) >= 2 && f[0] == "KEYEXPIRED":
			expired, _ = strconv.ParseInt(f[1], 10, 64)
		case len(f) >= 4 && f[0] == "VALIDSIG":
			made, _ = strconv.ParseInt(f[3], 10, 64)
		case len(f) >= 1 && f[0] == "EXPSIG":
			return false
		}
	}
	return expired > 0 && made > 0 && made < expired
}
