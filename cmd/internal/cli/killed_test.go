//go:build unix

package cli_test

import (
	"bytes"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"syscall"
	"testing"
	"time"
)

// A moment is when a program is ended: after a while, or as soon as it has begun
// to write a file.
type moment struct {
	after   time.Duration
	writing bool
}

// moments are many, spread over the time that a run takes.
func moments(seed, n uint64, takes time.Duration) []moment {
	r := rand.New(rand.NewPCG(seed, n))
	all := make([]moment, n)
	for i := range all {
		all[i] = moment{after: time.Duration(r.Float64() * 1.1 * float64(takes)), writing: i%2 == 1}
	}
	return all
}

// ended runs the program and sends it a signal at a moment. It returns what it said
// and whether it came to its own end before.
func (r *room) ended(m moment, sig syscall.Signal, line, folder string) (out string, status int) {
	r.t.Helper()
	cmd := exec.Command(r.program, strings.Fields(line)...)
	cmd.Dir, cmd.Env = filepath.Join(r.dir, folder), r.env
	cmd.SysProcAttr = &syscall.SysProcAttr{Setpgid: true}
	var said bytes.Buffer
	cmd.Stdout, cmd.Stderr = &said, &said
	if err := cmd.Start(); err != nil {
		r.t.Fatal(err)
	}
	done := make(chan struct{})
	go func() {
		defer close(done)
		_ = cmd.Wait()
	}()
	for begun := time.Now(); ; {
		select {
		case <-done:
			return said.String(), cmd.ProcessState.ExitCode()
		default:
		}
		if m.writing && len(r.parts()) > 0 || !m.writing && time.Since(begun) > m.after {
			break
		}
		time.Sleep(100 * time.Microsecond) // others test here as well
	}
	// A terminal, and a machine that goes down, reach all of a program's children.
	_ = syscall.Kill(-cmd.Process.Pid, sig)
	<-done
	return said.String(), cmd.ProcessState.ExitCode()
}

// parts are the files that are being written.
func (r *room) parts() []string {
	var found []string
	for _, pattern := range []string{"*.part", ".git/*.part", ".git/hooks/*.part", "*/*.part"} {
		names, _ := filepath.Glob(filepath.Join(r.dir, pattern))
		found = append(found, names...)
	}
	return found
}

// TestKilled ends everything that writes at many moments by a signal that no
// program can hear. Every file is as it was or as it was to be; git would add
// nothing that is left; the repository is whole; and the next run does all of it.
func TestKilled(t *testing.T) {
	t.Parallel()
	if testing.Short() {
		t.Skip("it runs a program of its own many times")
	}
	const times = 16
	for i, line := range writing() {
		t.Run(line[0], func(t *testing.T) {
			t.Parallel()
			r := newRoom(t)
			r.untidy(12)
			before := r.photo()
			begun := time.Now()
			if out, status := r.standing(line[1], slices.Concat([]string{r.program}, strings.Fields(line[0]))...); status > 1 {
				t.Fatalf("exit status %d: %s", status, out)
			}
			takes := time.Since(begun)
			wanted := r.photo()
			cut := 0
			for _, m := range moments(uint64(i), times, takes) { //nolint:gosec // a small number
				r.restore(before)
				if _, status := r.ended(m, syscall.SIGKILL, line[0], line[1]); status < 0 {
					cut++
				}
				r.eitherOr(before, wanted)
				if _, err := os.Stat(filepath.Join(r.dir, ".git", "hooks", "pre-commit")); err != nil {
					t.Errorf("no hook is in force: %v", err)
				}
			}
			if cut == 0 {
				t.Error("no run was ended before its own end, so this proves nothing")
			}
			r.fsck()
			if line[0] == "init" { // it writes over nothing, also where it was ended after all was done
				r.restore(before)
			}
			if out, status := r.standing(line[1], slices.Concat([]string{r.program}, strings.Fields(line[0]))...); status > 1 {
				t.Errorf("the next run: exit status %d: %s", status, out)
			}
			if diff := differ(wanted, r.photo()); len(diff) > 0 && !onlyParts(diff) {
				t.Errorf("after the next run these are not as they should be: %v", diff)
			}
		})
	}
}

// restore puts everything back as a photo has it.
func (r *room) restore(photo map[string]string) {
	r.t.Helper()
	now := r.photo()
	for _, name := range differ(photo, now) {
		path := filepath.Join(r.dir, name)
		text, there := photo[name]
		if !there {
			if err := os.Remove(path); err != nil {
				r.t.Fatal(err)
			}
			continue
		}
		if err := os.WriteFile(path, []byte(text), 0o644); err != nil {
			r.t.Fatal(err)
		}
	}
}

// eitherOr holds every file to being as it was before, or as the work done has it.
// Sheets of labels replace each other: one may be gone. What git leaves of its own
// settings when it is ended is git's, and has a name that git knows.
func (r *room) eitherOr(before, wanted map[string]string) {
	r.t.Helper()
	now := r.photo()
	for _, name := range differ(before, now) {
		text, there := now[name]
		want, known := wanted[name]
		switch {
		case there && known && text == want:
		case there && strings.HasPrefix(name, ".git/") && (strings.HasSuffix(name, ".part") || strings.HasSuffix(name, ".lock")):
		case !there && strings.HasPrefix(name, "sheets/"):
		case name == ".git/config": // git writes one setting at a time, each wholly
			r.mustGit(r.dir, "config", "--list")
		case varies(name):
			r.wholeOrOld(name, text)
		default:
			r.t.Errorf("%s is neither as it was nor as it was to be: %q", name, text)
		}
	}
	if err := os.Remove(filepath.Join(r.dir, ".git", "config.lock")); err == nil {
		r.t.Log("git itself was ended while it wrote its settings; it says so, and what to do")
	}
}

// varies says whether two runs write a file in two ways: an archive holds times.
func varies(name string) bool { return name == "report" || name == "labels.pdf" }

// wholeOrOld holds a file that is not the same in each run to having its end.
func (r *room) wholeOrOld(name, text string) {
	r.t.Helper()
	if strings.HasPrefix(text, "PK") && !strings.Contains(text, "PK\x05\x06") || strings.HasPrefix(text, "%PDF") && !strings.Contains(text, "%%EOF") || text == "" {
		r.t.Errorf("%s is half written", name)
	}
}

// onlyParts says whether nothing but files that never got to their places differ.
func onlyParts(names []string) bool {
	return !slices.ContainsFunc(names, func(name string) bool {
		return !strings.HasPrefix(name, ".git/") || !strings.HasSuffix(name, ".part")
	})
}

// TestInterruptedWriting ends fmt as a user does. Every file is whole, nothing at
// all is left, and the exit status says that it was interrupted.
func TestInterruptedWriting(t *testing.T) {
	t.Parallel()
	r := newRoom(t)
	r.untidy(40)
	before := r.photo()
	begun := time.Now()
	if out, status := r.homerun("fmt"); status != 0 {
		t.Fatalf("exit status %d: %s", status, out)
	}
	takes := time.Since(begun)
	wanted := r.photo()
	heard := 0
	for _, m := range moments(99, 24, takes) {
		r.restore(before)
		out, status := r.ended(m, syscall.SIGINT, "fmt", "")
		switch {
		case status == 130 && strings.Contains(out, "git homerun: interrupted"):
			heard++
		case status != 0 && status != -1: // -1: before the program had begun to listen
			t.Errorf("exit status %d: %s", status, out)
		}
		r.eitherOr(before, wanted)
		if left := r.parts(); len(left) > 0 {
			t.Errorf("left: %v", left)
		}
	}
	if heard == 0 {
		t.Error("no run heard the signal, so this proves nothing")
	}
	r.fsck()
}

// TestInterruptedDemo ends the demo in the middle: its folder goes with it.
func TestInterruptedDemo(t *testing.T) {
	t.Parallel()
	r := newRoom(t)
	heard := 0
	for _, m := range []moment{{after: 50 * time.Millisecond}, {after: 150 * time.Millisecond}, {after: 300 * time.Millisecond}, {after: 600 * time.Millisecond}, {after: 900 * time.Millisecond}} {
		out, status := r.ended(m, syscall.SIGINT, "demo --dir shown", "")
		if _, err := os.Stat(filepath.Join(r.dir, "shown")); status == 130 && err == nil {
			t.Errorf("the demo's folder is left: %s", out)
		}
		switch status {
		case 130:
			heard++
		case 0:
			if err := os.RemoveAll(filepath.Join(r.dir, "shown")); err != nil {
				t.Fatal(err)
			}
		case -1: // before the program had begun to listen
		default:
			t.Errorf("exit status %d: %s", status, out)
		}
	}
	if heard == 0 {
		t.Error("no run heard the signal, so this proves nothing")
	}
}
