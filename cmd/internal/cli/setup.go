package cli

import (
	"context"
	"errors"
	"fmt"
	"path/filepath"
	"strings"

	"github.com/spf13/cobra"

	"homerun/schema"
	"homerun/schema/vcs"
)

type setupFlags struct{ check, remove, trailer bool }

func newSetup(a *app) *cobra.Command {
	var o setupFlags
	cmd := &cobra.Command{
		Use:   "setup [--check | --remove]",
		Short: "make this clone check, merge and compare by record",
		Long: `Make this clone check, merge and compare by record. None of it comes with a
clone, so everybody runs it once:

  the hooks       check each commit, and what is pushed
  merge driver    git merges record by record and field by field, not by lines
  diff driver     git diff and git log -p show which facts differ
  attributes      .gitattributes beside each plant.hcl says which files these
                  are for; commit it, and it does come with a clone

With --trailer each commit message names the work that the commit orders, such
as "Order: 1 move, 2 adds". In a bare repository only the hook that checks
what is pushed is set. Run again it changes nothing; --remove takes it all out.`,
		Args: exactly(0, "no arguments"),
		RunE: func(cmd *cobra.Command, _ []string) error { return a.setup(cmd.Context(), o) },
	}
	f := cmd.Flags()
	f.BoolVar(&o.check, "check", false, "change nothing; say what is missing and how to mend it, exit status 1 if anything is")
	f.BoolVar(&o.remove, "remove", false, "take out what setup has set")
	f.BoolVar(&o.trailer, "trailer", false, "name the work of a commit in its message")
	return cmd
}

// A place is the repository that is set up and the program that it is to run.
type place struct {
	*app
	src     *source
	repo    *vcs.Repo
	program string
	hooks   []string
}

func (a *app) setup(ctx context.Context, o setupFlags) error {
	if o.check && o.remove {
		return &usageError{"--check and --remove ask for two different things", "give one of them"}
	}
	src, err := a.open(ctx)
	if err != nil {
		return err
	}
	defer src.close()
	src.all = true
	program, err := a.Program()
	if err != nil {
		return fmt.Errorf("the path of this program can not be told: %w", err)
	}
	p := &place{app: a, src: src, repo: src.repo, program: program, hooks: hooksFor(src.repo)}
	if o.trailer && !src.repo.Form().Bare {
		p.hooks = append(p.hooks, hookCommitMsg)
	}
	switch {
	case o.check:
		return p.check(ctx)
	case o.remove:
		return p.remove(ctx)
	}
	return p.set(ctx)
}

// set sets everything. The hooks come last: where they belong to somebody else
// the rest is set all the same.
func (p *place) set(ctx context.Context) error {
	if !p.repo.Form().Bare {
		if err := p.setSettings(ctx); err != nil {
			return err
		}
		if err := p.setAttributes(ctx); err != nil {
			return err
		}
	}
	return p.setHooks(ctx, p.repo, p.program, p.hooks)
}

func (p *place) remove(ctx context.Context) error {
	if !p.repo.Form().Bare {
		if err := p.unsetSettings(ctx); err != nil {
			return err
		}
		if err := p.unsetAttributes(ctx); err != nil {
			return err
		}
	}
	return p.unsetHooks(p.repo)
}

// A lack is something that is missing, and how to mend it.
type lack struct{ what, mend string }

// check says what is missing.
func (p *place) check(ctx context.Context) error {
	var lacks []lack
	looks := []func(context.Context) ([]lack, error){p.hooksLacking}
	if !p.repo.Form().Bare {
		looks = append(looks, p.settingsLacking, p.attributesLacking)
	}
	for _, look := range looks {
		some, err := look(ctx)
		if err != nil {
			return err
		}
		lacks = append(lacks, some...)
	}
	for _, l := range lacks {
		if err := p.say("%s\n  %s\n", l.what, l.mend); err != nil {
			return err
		}
	}
	if len(lacks) > 0 {
		return errObjected
	}
	return p.say("nothing is missing\n")
}

func (p *place) say(format string, words ...any) error {
	for i, w := range words {
		if text, ok := w.(string); ok {
			words[i] = schema.Printable(text)
		}
	}
	_, err := fmt.Fprintf(p.Out, format, words...)
	return err
}

const mendSetup = "run: git homerun setup"

// hooksLacking looks at the hooks. One that is somebody else's counts where it
// runs what ours would.
func (p *place) hooksLacking(context.Context) ([]lack, error) {
	var lacks []lack
	for _, name := range p.hooks {
		path := filepath.Join(p.repo.HooksDir(), name)
		state, err := hookState(path, name, p.program)
		if err != nil {
			return nil, err
		}
		switch state {
		case hookRight:
		case hookMissing:
			lacks = append(lacks, lack{"the hook " + name + " is not set", mendSetup})
		case hookStale:
			lacks = append(lacks, lack{"the hook " + name + " is ours, but not as it is written today", mendSetup})
		case hookIdle:
			lacks = append(lacks, lack{"the hook " + name + " is set, but git may not run it: " + path, "make it a program: chmod +x " + shellQuote(path)})
		case hookForeign:
			if p.byFramework() {
				continue
			}
			lacks = append(lacks, lack{"the hook " + name + " is somebody else's and does not run git homerun: " + path, mendSetup + " (it runs first then), or add to it: " + hookLines(p.program, []string{name})})
		}
	}
	return lacks, nil
}

// frameworkFile is where the hook framework of many languages is told what its
// hooks run.
const frameworkFile = ".pre-commit-config.yaml"

// byFramework says whether the framework is told to run git homerun: then its
// hooks do, though they do not say so.
func (p *place) byFramework() bool {
	text, err := p.repo.ReadFile(frameworkFile)
	return err == nil && strings.Contains(string(text), "homerun")
}

// settings are what git is told about the drivers: name and value. Git takes %
// in a driver's command for its own, and a text of several lines as several
// patterns: records as they are written, and as the diff driver lists them.
func (p *place) settings() [][2]string {
	program := shellQuote(filepath.ToSlash(p.program))
	return [][2]string{
		{"merge.homerun.name", "cable records, record by record"},
		{"merge.homerun.driver", percented(program) + " merge-driver " + driverWords},
		{"diff.homerun.command", program + " diff-driver --classes"},
		{"diff.homerun.textconv", program + " diff-driver"},
		{"diff.homerun.xfuncname", "^[ \t]*([a-z][a-z-]*[ \t]+\"[^\"]*\")\n^([a-z][a-z-]* [^,]*)$"},
	}
}

func (p *place) setting(ctx context.Context, name string) (value string, err error) {
	value, _, err = p.repo.Config(ctx, name)
	return value, err
}

func (p *place) setSettings(ctx context.Context) error {
	for _, s := range p.settings() {
		now, err := p.setting(ctx, s[0])
		if err != nil {
			return err
		}
		if now == s[1] {
			continue
		}
		if _, err := p.git(ctx, p.stand, "config", "--local", "--replace-all", s[0], s[1]); err != nil {
			return err
		}
	}
	return errors.Join(p.say("merge driver is set: merge.homerun.driver\n"), p.say("diff driver is set: diff.homerun.command, diff.homerun.textconv\n"))
}

func (p *place) settingsLacking(ctx context.Context) ([]lack, error) {
	var lacks []lack
	for _, s := range p.settings() {
		now, err := p.setting(ctx, s[0])
		switch {
		case err != nil:
			return nil, err
		case now == "":
			lacks = append(lacks, lack{"git config " + s[0] + " is not set", mendSetup})
		case now != s[1]:
			lacks = append(lacks, lack{"git config " + s[0] + " is " + schema.Quote(now) + ", not " + schema.Quote(s[1]), mendSetup})
		}
	}
	return lacks, nil
}

func (p *place) unsetSettings(ctx context.Context) error {
	for _, section := range []string{"merge.homerun", "diff.homerun"} {
		said, err := p.git(ctx, p.stand, "config", "--local", "--get-regexp", "^"+section+"\\.")
		if err != nil || said == "" {
			continue // git ends with 1 where nothing is set
		}
		if _, err := p.git(ctx, p.stand, "config", "--local", "--remove-section", section); err != nil {
			return err
		}
	}
	return p.say("merge driver and diff driver are taken out\n")
}
