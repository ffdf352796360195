package cli

import (
	"context"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"github.com/spf13/cobra"

	"homerun/examples"
	"homerun/schema/console"
)

// What the demo shows on its repository: the change of two years, one record;
// and the change of four years, which is long and waits for whoever asks.
const (
	demoFolder = "homerun-demo"
	demoChange = "2022-10-01..2023-12-31"
	demoLong   = "as-built-2021..HEAD"
	demoRecord = "1A-D02"
	demoRule   = "rating-listing"
)

func newDemo(a *app) *cobra.Command {
	var dir string
	cmd := &cobra.Command{
		Use:   "demo [--dir DIR]",
		Short: "see the whole job on an example, in a real repository",
		Long: `Make a real git repository in a new folder, replay the story of an invented
building into it, and show on it what the tool is for: a commit that the hook
refuses, the findings, a work order and the history of one record.

It needs no network and touches nothing but the new folder.`,
		Args: exactly(0, "no arguments"),
		RunE: func(cmd *cobra.Command, _ []string) error { return a.demo(cmd.Context(), dir) },
	}
	cmd.Flags().StringVar(&dir, "dir", "", "the folder to make; by default "+demoFolder+" here, or the first of "+demoFolder+"-2, -3 and so on that is free")
	return cmd
}

// demo makes the repository and shows the commands on it. A demo that can not
// be finished takes its folder away again: it made it a moment ago.
func (a *app) demo(ctx context.Context, want string) (err error) {
	commits, err := examples.Story()
	if err != nil {
		return err
	}
	dir, err := a.demoDir(want)
	if err != nil {
		return err
	}
	defer func() {
		if err != nil {
			err = errors.Join(err, os.RemoveAll(dir))
		}
	}()
	d := &demo{app: a, dir: dir, page: console.New(a.Out, a.page(ctx, a.Out))}
	if err = d.replay(ctx, commits); err != nil {
		return err
	}
	if err = d.show(ctx, commits[len(commits)-1]); err != nil {
		return err
	}
	d.farewell()
	return d.page.Err()
}

// demoDir makes the folder. One that is there already is never used.
func (a *app) demoDir(want string) (string, error) {
	if want != "" {
		dir := a.userPath(want)
		err := os.Mkdir(dir, 0o777)
		if errors.Is(err, fs.ErrExist) {
			return "", &usageError{dir + " is there already, and the demo only works in a new folder", "name another folder with --dir"}
		}
		if err != nil {
			err = fmt.Errorf("the demo's folder can not be made: %w", err)
		}
		return dir, err
	}
	const most = 1000 // whoever has so many wants to clear up first
	for i := 1; i <= most; i++ {
		dir := a.userPath(demoFolder)
		if i > 1 {
			dir = fmt.Sprintf("%s-%d", dir, i)
		}
		err := os.Mkdir(dir, 0o777)
		if err == nil {
			return dir, nil
		}
		if !errors.Is(err, fs.ErrExist) {
			return "", fmt.Errorf("the demo's folder can not be made: %w", err)
		}
	}
	return "", &usageError{fmt.Sprintf("there are %d demo folders here already", most), "name a new one with --dir"}
}

// A demo is one demo in the making.
type demo struct {
	app  *app
	dir  string
	page *console.Page
	// carried is set where the program had to be copied into the repository,
	// because the one that runs will be gone.
	carried bool
	// branch is where the working tree is, mending whether the commit before
	// was refused.
	branch  string
	mending bool
}

// heading says what comes next, and why one would want to see it.
func (d *demo) heading(title, why string) {
	d.page.Blank()
	d.page.Line(0, 0, console.In(console.Strong, "== "+title))
	d.page.Line(0, 0, console.In(console.Quiet, why))
	d.page.Blank()
}

// show runs the commands on the repository as a user would, on the day of the
// last commit, so that the demo says the same in every year.
func (d *demo) show(ctx context.Context, last examples.Commit) error {
	inside := d.inside(d.env(last))
	for _, part := range []struct {
		title, why string
		args       []string
	}{
		{"Findings: git homerun lint", "Every finding shows its sum and where its limit comes from.", []string{"lint"}},
		{"A work order: git homerun order " + demoChange, "What has to happen on site between two states of the records, for a crew.", []string{"order", demoChange}},
		{"A history: git homerun history " + demoRecord, "The life of one cable, through a new label.", []string{"history", demoRecord}},
	} {
		d.heading(part.title, part.why)
		if err := d.page.Err(); err != nil {
			return err
		}
		if err := inside.run(ctx, append(part.args, "--color="+d.colour(ctx))); err != nil && !errors.Is(err, errObjected) {
			return err
		}
	}
	return nil
}

// inside is the program as it runs in the demo's repository.
func (d *demo) inside(env []string) *app {
	p := d.app.Process
	p.Env = env
	p.Dir = func() (string, error) { return d.dir, nil }
	return &app{Process: p}
}

// colour hands the user's own decision on, because the demo's environment
// hides the user's settings of git.
func (d *demo) colour(ctx context.Context) string {
	if d.app.colour(ctx, d.app.Out) {
		return "always"
	}
	return "never"
}

// farewell says what to type next.
func (d *demo) farewell() {
	d.heading("What to type next", "The repository is yours: look around, change something, throw it away.")
	where, err := filepath.Rel(d.app.stand, d.dir)
	if err != nil || strings.HasPrefix(where, "..") {
		where = d.dir
	}
	if d.carried {
		d.page.Terms(2, [2]string{"go install ./cmd/git-homerun", "in the source folder: puts the program where git finds it"})
		d.page.Blank()
	}
	d.page.Terms(2,
		[2]string{"cd " + where, "the records are the .hcl files; git log tells the story"},
		[2]string{"git homerun lint", "the findings, of what is saved"},
		[2]string{"git homerun lint --at 2019-01-01", "the findings of any day"},
		[2]string{"git homerun explain " + demoRule, "a rule, its source, an example"},
		[2]string{"git homerun order " + demoLong, "a long work order: adds and removals too"},
		[2]string{"git homerun history 1A-A16", "a cable that moved to another room"},
		[2]string{"git homerun export -o records.xlsx", "the records as a spreadsheet; git homerun import takes it back"},
	)
	d.page.Blank()
	d.page.Line(2, 2, console.Plain("And be refused: in runs/workshop.hcl give run 1A-C01 a length of \"95 m\", then"))
	d.page.Terms(2, [2]string{`git commit -am "Longer"`, "the hook works the sum out; with 61 m it lets you through"})
}
