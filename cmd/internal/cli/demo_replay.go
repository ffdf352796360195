package cli

import (
	"context"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"time"

	"homerun/examples"
	"homerun/schema/console"
	"homerun/schema/unit"
)

// env is the user's environment without anything that could steer git: neither
// settings nor repository nor date come from outside, so that the commits are
// the same everywhere. The commit's author and day are put in.
func (d *demo) env(c examples.Commit) []string {
	var env []string
	for _, e := range d.app.Env {
		// Where git itself lies is nothing that changes a commit.
		if strings.HasPrefix(e, "GIT_") && !strings.HasPrefix(e, "GIT_EXEC_PATH=") || strings.HasPrefix(e, "HOMERUN_") {
			continue
		}
		env = append(env, e)
	}
	when := c.When.Format(time.RFC3339)
	return append(env, "GIT_CONFIG_NOSYSTEM=1", "GIT_CONFIG_GLOBAL="+os.DevNull, "GIT_TERMINAL_PROMPT=0",
		"GIT_AUTHOR_NAME="+c.Author, "GIT_AUTHOR_EMAIL="+c.Email, "GIT_AUTHOR_DATE="+when,
		"GIT_COMMITTER_NAME="+c.Author, "GIT_COMMITTER_EMAIL="+c.Email, "GIT_COMMITTER_DATE="+when,
		"HOMERUN_TODAY="+lastDay(c))
}

func (d *demo) git(ctx context.Context, c examples.Commit, args ...string) error {
	_, err := d.app.gitWith(ctx, d.dir, d.env(c), args...)
	return err
}

// replay makes the repository, sets the hook in it and makes every commit.
func (d *demo) replay(ctx context.Context, commits []examples.Commit) error {
	d.page.Line(0, 0, console.In(console.Strong, "Saltmarsh Hall, an invented building of two floors, in "+d.dir))
	d.page.Line(0, 0, console.Plain("Its records are replayed into a real git repository, commit by commit. It checks records: it is no design approval and no inspection."))
	d.page.Blank()
	// The form of the ids and the name of the branch are fixed for the ids'
	// sake, line ends for the files'.
	if err := d.git(ctx, commits[0], "init", "-q", "--template=", "--object-format=sha1", "-b", "main"); err != nil {
		return err
	}
	if err := d.git(ctx, commits[0], "config", "core.autocrlf", "false"); err != nil {
		return err
	}
	if err := d.hook(ctx, commits[0]); err != nil {
		return err
	}
	branches := map[string]bool{"": true}
	for _, c := range commits {
		if !branches[c.Branch] {
			branches[c.Branch] = true
			if err := d.git(ctx, c, "branch", c.Branch); err != nil {
				return err
			}
		}
		if err := d.commit(ctx, c); err != nil {
			return fmt.Errorf("%s: %w", c.Subject, err)
		}
	}
	return d.page.Err()
}

// commit makes one commit. The hook is left out but for the attempt that it
// refuses and the commit that mends it: it is the same check each time.
func (d *demo) commit(ctx context.Context, c examples.Commit) error {
	if err := d.checkout(ctx, c); err != nil {
		return err
	}
	if err := d.write(c); err != nil {
		return err
	}
	if err := d.git(ctx, c, "add", "-A"); err != nil {
		return err
	}
	message := []string{"-q", "-m", c.Subject, "-m", c.Body}
	var err error
	switch {
	case c.Refused:
		err = d.refused(ctx, c, message)
	case d.mending:
		err = d.mended(ctx, c, message)
	case c.Merge != "":
		d.told(c)
		err = d.git(ctx, c, append([]string{"merge", "--no-verify", "--no-ff", c.Merge}, message...)...)
	default:
		d.told(c)
		err = d.git(ctx, c, append([]string{"commit", "--no-verify"}, message...)...)
	}
	d.mending = c.Refused
	if err != nil || c.Tag == "" {
		return err
	}
	return d.git(ctx, c, "tag", c.Tag)
}

// checkout goes to the commit's branch.
func (d *demo) checkout(ctx context.Context, c examples.Commit) error {
	if d.branch == c.Branch {
		return nil
	}
	d.branch = c.Branch
	if c.Branch == "" {
		return d.git(ctx, c, "checkout", "-q", "main")
	}
	return d.git(ctx, c, "checkout", "-q", c.Branch)
}

// write puts the commit's files in place.
func (d *demo) write(c examples.Commit) error {
	for path, text := range c.Write {
		to := filepath.Join(d.dir, filepath.FromSlash(path))
		if err := os.MkdirAll(filepath.Dir(to), 0o777); err != nil {
			return fmt.Errorf("the demo's files can not be written: %w", err)
		}
		if err := os.WriteFile(to, []byte(text), 0o666); err != nil {
			return fmt.Errorf("the demo's files can not be written: %w", err)
		}
	}
	for _, path := range c.Delete {
		if err := os.Remove(filepath.Join(d.dir, filepath.FromSlash(path))); err != nil {
			return fmt.Errorf("the demo's files can not be deleted: %w", err)
		}
	}
	return nil
}

// told writes a line of the story.
func (d *demo) told(c examples.Commit) {
	d.page.Line(2, 14, console.In(console.Quiet, lastDay(c)), console.Plain("  "+c.Subject))
}

// refused makes the attempt and shows what the hook says to it.
func (d *demo) refused(ctx context.Context, c examples.Commit, message []string) error {
	d.heading("A commit that the hook refuses: "+c.Subject, why(c))
	said, made, err := d.attempt(ctx, c, message)
	if err != nil {
		return err
	}
	if made {
		return errors.New("the hook did not refuse the commit")
	}
	d.quote(said)
	return d.git(ctx, c, "reset", "-q", "--hard")
}

// mended makes the commit after a refused one, with the hook looking on.
func (d *demo) mended(ctx context.Context, c examples.Commit, message []string) error {
	d.heading("And the commit that mends it: "+c.Subject, why(c))
	said, made, err := d.attempt(ctx, c, message)
	if err != nil {
		return err
	}
	d.quote(said)
	d.page.Blank()
	if !made {
		return errors.New("the hook refused the commit")
	}
	return nil
}

// why is a commit's message on one line, with its day.
func why(c examples.Commit) string {
	return lastDay(c) + ". " + strings.Join(strings.Fields(c.Body), " ")
}

// attempt commits with the hook and returns what was said on the way.
func (d *demo) attempt(ctx context.Context, c examples.Commit, message []string) (said string, made bool, err error) {
	if err = d.page.Err(); err != nil {
		return "", false, err
	}
	cmd := exec.CommandContext(ctx, "git", append([]string{"commit"}, message...)...)
	cmd.Dir, cmd.Env = d.dir, d.env(c)
	out, err := cmd.CombinedOutput()
	if _, exited := errors.AsType[*exec.ExitError](err); exited && ctx.Err() == nil {
		return string(out), false, nil
	}
	if err != nil {
		return "", false, fmt.Errorf("git commit: %w", err)
	}
	return string(out), true, nil
}

// quote shows lines as the hook laid them out.
func (d *demo) quote(said string) {
	for line := range strings.Lines(said) {
		text := strings.TrimLeft(strings.TrimRight(line, "\r\n"), " ")
		indent := len(strings.TrimRight(line, "\r\n")) - len(text)
		d.page.Line(indent, indent+2, console.Plain(text))
	}
}

// lastDay is the date by which a commit of the story is judged.
func lastDay(c examples.Commit) string { return unit.DateOf(c.When).String() }
