package vcs

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os/exec"
	"time"
)

// runner starts git commands in the folder the user stands in, so that git resolves every relative path of the
// environment as it would for the user.
type runner struct {
	program string
	dir     string
	env     []string
}

func newRunner(o Options) *runner {
	program := o.Git
	if program == "" {
		program = "git"
	}
	return &runner{program: program, dir: o.Dir, env: environ(o.Env, o.Missing)}
}

// useIndex makes a GIT_INDEX_FILE of the environment absolute.
func (g *runner) useIndex(path string) {
	if _, set := lookup(g.env, "GIT_INDEX_FILE"); set {
		g.env = append(g.env, "GIT_INDEX_FILE="+path)
	}
}

// child is a running git command.
type child struct {
	name   string
	cmd    *exec.Cmd
	in     io.WriteCloser
	out    io.ReadCloser
	said   capped
	cancel context.CancelFunc
}

// start begins a command whose output is read while it runs. The caller must call wait or stop.
func (g *runner) start(ctx context.Context, args ...string) (*child, error) {
	running, cancel := context.WithCancel(ctx)
	c := &child{name: args[0], cancel: cancel}
	c.said.limit = maxAnswer
	c.cmd = exec.CommandContext(running, g.program, append(settings(), args...)...)
	c.cmd.Dir, c.cmd.Env, c.cmd.Stderr = g.dir, g.env, &c.said
	// A grandchild that keeps a pipe open must not hold us after git is gone.
	c.cmd.WaitDelay = 2 * time.Second
	in, inErr := c.cmd.StdinPipe()
	out, outErr := c.cmd.StdoutPipe()
	c.in, c.out = in, out
	if err := errors.Join(inErr, outErr, c.cmd.Start()); err != nil {
		cancel()
		return nil, notStarted(ctx, err)
	}
	return c, nil
}

// notStarted words the failure to start git at all.
func notStarted(ctx context.Context, err error) error {
	if ctx.Err() != nil {
		return fmt.Errorf("git: %w", context.Cause(ctx))
	}
	var at *fs.PathError
	if errors.As(err, &at) && at.Op == "chdir" {
		return fmt.Errorf("%w: %w", ErrNotRepository, err)
	}
	return fmt.Errorf("%w: %w", ErrNoGit, err)
}

// wait ends reading and gives the command's failure, if any. A cancelled ctx is reported as such.
func (c *child) wait(ctx context.Context) error {
	defer c.cancel()
	_ = c.in.Close()
	err := c.cmd.Wait()
	if ctx.Err() != nil {
		return fmt.Errorf("git %s: %w", c.name, context.Cause(ctx))
	}
	var exit *exec.ExitError
	switch {
	case err == nil:
		return nil
	case errors.As(err, &exit):
		said := string(bytes.TrimSpace(c.said.Bytes()))
		return &gitError{command: c.name, status: exit.ExitCode(), said: said, kind: kindOf(said)}
	}
	return fmt.Errorf("git %s: %w", c.name, err)
}

// stop kills the command and forgets its failure: the caller has what it needs, or has a better error.
func (c *child) stop() {
	c.cancel()
	_ = c.in.Close()
	_ = c.cmd.Wait()
}

// explain ends a command whose answer could not be read on and gives the better of its own complaint and what the
// reader saw. A child that still runs would wait for us to read for ever, so only one that closed its output is
// waited for.
func (c *child) explain(ctx context.Context, seen error) error {
	if ctx.Err() == nil && !errors.Is(seen, io.EOF) && !errors.Is(seen, io.ErrUnexpectedEOF) {
		c.stop()
		return fmt.Errorf("git %s: %w", c.name, seen)
	}
	if err := c.wait(ctx); err != nil {
		return err
	}
	return fmt.Errorf("git %s: %w", c.name, seen)
}

// output runs a command to its end and gives what it printed, also when it failed. More than maxAnswer is ErrTooLarge.
func (g *runner) output(ctx context.Context, args ...string) ([]byte, error) {
	c, err := g.start(ctx, args...)
	if err != nil {
		return nil, err
	}
	_ = c.in.Close()
	text, err := io.ReadAll(io.LimitReader(c.out, maxAnswer+1))
	if err != nil || len(text) > maxAnswer {
		c.stop()
		if err == nil {
			err = ErrTooLarge
		}
		return nil, fmt.Errorf("git %s: answer: %w", args[0], err)
	}
	return text, c.wait(ctx)
}

// capped keeps the first limit bytes written to it and swallows the rest, so that a chatty child is never blocked.
type capped struct {
	bytes.Buffer
	limit int
}

// Write never fails.
func (b *capped) Write(p []byte) (int, error) {
	if room := b.limit - b.Len(); room > 0 {
		_, _ = b.Buffer.Write(p[:min(room, len(p))])
	}
	return len(p), nil
}
