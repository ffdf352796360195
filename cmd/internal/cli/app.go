package cli

import (
	"context"
	"errors"
	"fmt"
	"io"
	"slices"
	"strings"
	"time"

	"github.com/spf13/cobra"

	"homerun/schema"
	"homerun/schema/console"
	"homerun/schema/unit"
)

// A Process is what the program gets from the system: the only way in which
// commands reach streams, environment, clock and folder.
type Process struct {
	In       io.Reader
	Out, Err io.Writer
	Env      []string
	// Dir returns the folder the user stands in, Program the path of the
	// running executable.
	Dir, Program func() (string, error)
	Now          func() time.Time
}

// app is one run of the program.
type app struct {
	Process
	// stand is where the user stands.
	stand string
	// plantFlag and colourFlag are the flags that every command has.
	plantFlag, colourFlag string
	// progress tells what takes long; nil where nobody waits.
	progress *progress
}

// objection is returned by a command that did its job and found something to
// object to: it is exit status 1 and prints nothing more.
var errObjected = errors.New("objections were reported")

// usageError is a mistake in the command line.
type usageError struct{ message, next string }

// Error is the sentence about the mistake.
func (e *usageError) Error() string { return e.message }

// Main runs the program and returns its exit status.
func Main(ctx context.Context, args []string, p Process) int {
	a := &app{Process: p}
	err := a.run(ctx, args)
	switch {
	case err == nil:
		return statusClean
	case errors.Is(err, errObjected):
		return statusObjected
	case interrupted(ctx, err):
		_, _ = fmt.Fprintln(a.Err, "git homerun: interrupted") // there is nobody left to tell
		return statusInterrupted
	}
	a.complain(err)
	if _, ok := errors.AsType[*usageError](err); ok {
		return statusUsage
	}
	return statusFailed
}

// interrupted says whether a failure is the user's own doing. A child that the
// same signal ended may tell of its end a moment before the signal is seen here.
func interrupted(ctx context.Context, err error) bool {
	const moment = 50 * time.Millisecond
	if _, ok := errors.AsType[*usageError](err); !ok {
		select {
		case <-ctx.Done():
		case <-time.After(moment):
		}
	}
	return ctx.Err() != nil
}

func (a *app) run(ctx context.Context, args []string) (err error) {
	if a.stand, err = a.Dir(); err != nil {
		return fmt.Errorf("this folder can not be found: %w", err)
	}
	out, errs := a.streams(ctx)
	defer func() {
		a.progress.stop()
		out.pager.close()
	}()
	root := newRoot(a)
	root.PersistentPreRunE = func(cmd *cobra.Command, _ []string) error {
		out.pager = a.pagerFor(cmd.Context(), cmd.Name(), out, errs)
		if known := []string{"auto", "always", "never"}; !slices.Contains(known, a.colourFlag) {
			return &usageError{"--color is auto, always or never, not " + schema.Quote(a.colourFlag), didYouMean(a.colourFlag, known, "")}
		}
		return nil
	}
	root.SetArgs(args)
	root.SetIn(a.In)
	root.SetOut(a.Out)
	root.SetErr(a.Err)
	if err = root.ExecuteContext(ctx); err == nil {
		err = out.failed
	}
	return err
}

// today is the date by which waivers expire: HOMERUN_TODAY where it is set, so
// that a check can be repeated as it was on another day, otherwise the clock's.
func (a *app) today() (unit.Date, error) {
	if text := a.getenv("HOMERUN_TODAY"); text != "" {
		date, err := unit.ParseDate(text)
		if err != nil {
			return unit.Date{}, &usageError{"HOMERUN_TODAY: " + err.Error(), "write a date such as 2026-03-31"}
		}
		return date, nil
	}
	return unit.DateOf(a.Now()), nil
}

func (a *app) getenv(name string) string {
	for _, setting := range slices.Backward(a.Env) {
		if value, ok := strings.CutPrefix(setting, name+"="); ok {
			return value
		}
	}
	return ""
}

// page is how text goes to a writer of the process: in colour or not.
func (a *app) page(ctx context.Context, w io.Writer) console.Options {
	return console.Options{Colour: a.colour(ctx, w)}
}

// colour decides about colour: the flag, then NO_COLOR, then git's own
// color.homerun and color.ui, which know whether the output is a terminal.
func (a *app) colour(ctx context.Context, w io.Writer) bool {
	switch a.colourFlag {
	case "always":
		return true
	case "never":
		return false
	}
	if a.getenv("NO_COLOR") != "" || a.getenv("TERM") == "dumb" {
		return false
	}
	terminal := a.getenv("GIT_PAGER_IN_USE") == "true" || isTerminal(w)
	said, err := a.git(ctx, a.stand, "config", "--get-colorbool", "color.homerun", fmt.Sprint(terminal))
	if err != nil {
		return terminal
	}
	return strings.TrimSpace(said) == "true"
}

// exactly refuses more or fewer arguments than a command takes, in our words.
func exactly(n int, what string) cobra.PositionalArgs {
	return func(cmd *cobra.Command, args []string) error {
		if len(args) == n {
			return nil
		}
		return &usageError{fmt.Sprintf("%s takes %s", cmd.CommandPath(), what), "see " + cmd.CommandPath() + " -h"}
	}
}
