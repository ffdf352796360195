package cli_test

import (
	"context"
	"os"
	"os/signal"
	"syscall"
	"testing"
	"time"

	"github.com/rogpeppe/go-internal/testscript"

	"homerun/cmd/internal/cli"
)

// TestMain makes git-homerun a program on the scripts' PATH, so that they call
// it as its users do: through git.
func TestMain(m *testing.M) {
	testscript.Main(m, map[string]func(){
		"git-homerun": func() {
			ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
			context.AfterFunc(ctx, stop)
			os.Exit(cli.Main(ctx, os.Args[1:], cli.Process{
				In: os.Stdin, Out: os.Stdout, Err: os.Stderr, Env: os.Environ(), Dir: os.Getwd, Program: os.Executable, Now: time.Now,
			}))
		},
		"bare-parse": bareParse,
	})
}

func TestScripts(t *testing.T) {
	t.Parallel()
	testscript.Run(t, testscript.Params{
		Dir:                 "testdata/script",
		RequireExplicitExec: true,
		UpdateScripts:       *update,
		Setup: func(env *testscript.Env) error {
			env.Setenv("GIT_CONFIG_NOSYSTEM", "1")
			env.Setenv("GIT_CONFIG_GLOBAL", env.WorkDir+"/.gitconfig")
			env.Setenv("HOME", env.WorkDir)
			env.Setenv("GIT_CEILING_DIRECTORIES", env.WorkDir)
			for _, who := range []string{"AUTHOR", "COMMITTER"} {
				env.Setenv("GIT_"+who+"_NAME", "Records Keeper")
				env.Setenv("GIT_"+who+"_EMAIL", "keeper@pier.example")
				env.Setenv("GIT_"+who+"_DATE", "2026-03-02T09:00:00+01:00")
			}
			env.Setenv("HOMERUN_TODAY", "2026-03-02")
			return os.WriteFile(env.WorkDir+"/.gitconfig", []byte("[init]\n\tdefaultBranch = main\n[core]\n\tautocrlf = false\n"), 0o600)
		},
	})
}
