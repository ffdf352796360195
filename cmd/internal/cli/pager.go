package cli

import (
	"context"
	"io"
	"os"
	"os/exec"
	"slices"
	"strings"
)

// paged names the commands whose answer may be longer than a screen.
func paged() []string {
	return []string{"lint", "explain", "order", "history", "audit", "trace", "ready", "takeoff"}
}

// A pager shows long text screen by screen. It starts when there is text.
type pager struct {
	command string
	env     []string
	out     io.Writer
	errs    io.Writer
	cmd     *exec.Cmd
	in      io.WriteCloser
	// gone is set where the user has read enough, and left.
	gone bool
}

// pagerFor finds the pager for a command's text on a terminal, nil for none.
// Where git pages already, one page in another helps nobody.
func (a *app) pagerFor(ctx context.Context, command string, out, errs *stream) *pager {
	if _, direct := out.Writer.(*os.File); !direct || !isTerminal(out.Writer) || !slices.Contains(paged(), command) {
		return nil
	}
	choice := a.chosenPager(ctx)
	if choice == "" || choice == "cat" {
		return nil
	}
	p := &pager{command: choice, env: slices.Clone(a.Env), out: out.Writer, errs: errs.Writer}
	// As git does: leave at the end of one screen, show colours, keep the text.
	for _, standard := range []string{"LESS=FRX", "LV=-c"} {
		name, _, _ := strings.Cut(standard, "=")
		if a.getenv(name) == "" {
			p.env = append(p.env, standard)
		}
	}
	return p
}

// chosenPager asks git for the user's pager. Git is asked outside of any
// repository: what the settings of a repository name is never run on its account.
func (a *app) chosenPager(ctx context.Context) string {
	said, err := a.gitWith(ctx, a.stand, a.outside(), "var", "GIT_PAGER")
	if err != nil {
		return "" // without a pager the text is still there
	}
	return strings.TrimSpace(said)
}

// Write hands text to the pager. Once the user has left it there is nobody to
// write to, which is no failure.
func (p *pager) Write(text []byte) (int, error) {
	if p.cmd == nil {
		if err := p.start(); err != nil {
			p.cmd = nil
			return p.out.Write(text) // no shell, no pager
		}
	}
	if !p.gone {
		_, err := p.in.Write(text)
		p.gone = err != nil
	}
	return len(text), nil
}

// start runs the pager in a shell, since its settings may hold options.
func (p *pager) start() (err error) {
	p.cmd = exec.Command("sh", "-c", p.command)
	p.cmd.Env, p.cmd.Stdout, p.cmd.Stderr = p.env, p.out, p.errs
	if p.in, err = p.cmd.StdinPipe(); err != nil {
		return err
	}
	return p.cmd.Start()
}

// close waits until the user has read everything.
func (p *pager) close() {
	if p == nil || p.cmd == nil {
		return
	}
	_ = p.in.Close()
	_ = p.cmd.Wait() // how the user left is the user's business
}
