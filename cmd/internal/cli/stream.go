package cli

import (
	"context"
	"io"
	"os"

	"github.com/mattn/go-isatty"
)

// A stream is one of the two outputs of the program. Before its first text the
// line about progress goes, and where a pager was wanted it starts.
type stream struct {
	io.Writer
	// ctx ends when the user interrupts: half a report is not begun then.
	ctx context.Context //nolint:containedctx // it lives exactly as long as the run
	// terminal is set where people read what is written, pager or not.
	terminal bool
	progress *progress
	// pager takes the text once it begins; nil without one.
	pager *pager
	// failed is the first failure to write: whoever prints help looks at none.
	failed error
}

// Write writes text, unless the user has interrupted before any was written.
func (s *stream) Write(text []byte) (n int, err error) {
	defer func() {
		if s.failed == nil {
			s.failed = err
		}
	}()
	if err = s.ctx.Err(); err != nil {
		return 0, err
	}
	s.progress.stop()
	if s.pager != nil {
		return s.pager.Write(text)
	}
	return s.Writer.Write(text)
}

// streams puts streams in front of the process's outputs.
func (a *app) streams(ctx context.Context) (out, errs *stream) {
	// Where git has begun to page, the screen is the pager's.
	if isTerminal(a.Err) && a.getenv("TERM") != "dumb" && a.getenv("GIT_PAGER_IN_USE") != "true" {
		a.progress = watch(a.Err)
	}
	out = &stream{Writer: a.Out, ctx: ctx, terminal: isTerminal(a.Out), progress: a.progress}
	// What went wrong is told after an interruption, too.
	errs = &stream{Writer: a.Err, ctx: context.WithoutCancel(ctx), terminal: isTerminal(a.Err), progress: a.progress}
	a.Out, a.Err = out, errs
	return out, errs
}

// isTerminal says whether people read what is written to w.
func isTerminal(w io.Writer) bool {
	if s, ok := w.(*stream); ok {
		return s.terminal
	}
	f, ok := w.(*os.File)
	return ok && isatty.IsTerminal(f.Fd())
}
