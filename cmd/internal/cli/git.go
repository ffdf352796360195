package cli

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"os/exec"
	"slices"
	"strings"
	"time"

	"homerun/schema/vcs"
)

// git runs a git command that writes or asks for settings; what is read from
// repositories goes through schema/vcs. Like there, git starts nothing that the
// repository names. The error carries what git said.
func (a *app) git(ctx context.Context, dir string, args ...string) (string, error) {
	return a.gitTold(ctx, dir, nil, args...)
}

// gitTold is git with something to read on its standard input.
func (a *app) gitTold(ctx context.Context, dir string, in io.Reader, args ...string) (string, error) {
	options, env := vcs.Harmless(a.Env)
	said, err := run(ctx, command{dir: dir, env: env, in: in, args: append(options, args...)})
	if err != nil {
		err = fmt.Errorf("git %s: %w", args[0], err)
	}
	return said, err
}

// gitWith runs git in an environment of the caller's: outside of the user's
// repository, or in one of our own.
func (a *app) gitWith(ctx context.Context, dir string, env []string, args ...string) (string, error) {
	said, err := run(ctx, command{dir: dir, env: env, args: args})
	if err != nil {
		err = fmt.Errorf("git %s: %w", args[0], err)
	}
	return said, err
}

// outside is the environment in which git belongs to no repository.
func (a *app) outside() []string { return append(slices.Clone(a.Env), "GIT_DIR="+os.DevNull) }

// A command is one run of git.
type command struct {
	dir  string
	env  []string
	in   io.Reader
	args []string
}

// run gives what the command printed. The error holds its sentence, if it said one.
func run(ctx context.Context, c command) (string, error) {
	cmd := exec.CommandContext(ctx, "git", c.args...)
	cmd.Dir, cmd.Env, cmd.Stdin = c.dir, c.env, c.in
	cmd.WaitDelay = time.Second // what a killed git started may hold its outputs open
	var out, said bytes.Buffer
	cmd.Stdout, cmd.Stderr = &out, &said
	err := cmd.Run()
	if sentence := strings.TrimSpace(said.String()); err != nil && sentence != "" {
		err = errors.New(sentence)
	}
	return out.String(), err
}
