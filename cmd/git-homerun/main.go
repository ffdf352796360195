// Command git-homerun keeps the cable records of buildings in git: it checks
// them, turns changes into work orders and follows a label through history.
// Git runs it as "git homerun".
package main

import (
	"context"
	"os"
	"os/signal"
	"runtime/debug"
	"syscall"
	"time"

	"homerun/cmd/internal/cli"
)

// The program reads, answers and ends: collecting garbage at every doubling of
// a small heap costs a fifth of a cold lint and saves nobody memory.
const heapGrowth = 300

func main() {
	if _, set := os.LookupEnv("GOGC"); !set {
		debug.SetGCPercent(heapGrowth)
	}
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
	context.AfterFunc(ctx, stop) // a second signal ends the program at once
	status := cli.Main(ctx, os.Args[1:], cli.Process{
		In: os.Stdin, Out: os.Stdout, Err: os.Stderr, Env: os.Environ(), Dir: os.Getwd, Program: os.Executable, Now: time.Now,
	})
	stop()
	os.Exit(status)
}
