package cli

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"os/exec"
	"strings"
	"time"
)

// git runs a git command that writes or asks for settings; what is read from
// repositories goes through schema/vcs. The error carries what git said.
func (a *app) git(ctx context.Context, dir string, args ...string) (string, error) {
	return a.gitWith(ctx, dir, a.Env, args...)
}

func (a *app) gitWith(ctx context.Context, dir string, env []string, args ...string) (string, error) {
	cmd := exec.CommandContext(ctx, "git", args...)
	cmd.Dir = dir
	cmd.Env = env
	cmd.WaitDelay = time.Second // what a killed git started may hold its outputs open
	var out, said bytes.Buffer
	cmd.Stdout, cmd.Stderr = &out, &said
	if err := cmd.Run(); err != nil {
		if sentence := strings.TrimSpace(said.String()); sentence != "" {
			err = errors.New(sentence)
		}
		return out.String(), fmt.Errorf("git %s: %w", args[0], err)
	}
	return out.String(), nil
}
