package cli

import (
	"context"
	"fmt"
	"os"
	"path/filepath"
	"strings"

	"github.com/spf13/cobra"
)

func newMan(a *app) *cobra.Command {
	var web bool
	cmd := &cobra.Command{
		Use:   "man DIR",
		Short: "write the manual pages that git shows for --help",
		Long: `Write the manual pages into a folder, which is made where there is none. Git
shows the first for git homerun --help and git help homerun, and man the others,
as in man git-homerun-lint, once the folder is one that man looks in. On most
systems that is share/man beside the bin of every folder of PATH:

    git homerun man ~/.local/share/man/man1

With --html the pages are written for a browser, which git opens instead on
Windows or where help.format is web. They belong in the folder that
git --html-path names.`,
		Args: exactly(1, "the folder to write to"),
		RunE: func(cmd *cobra.Command, args []string) error {
			ending := manEnding
			if web {
				ending = webEnding
			}
			return a.man(cmd.Context(), cmd.Root(), args[0], ending)
		},
	}
	cmd.Flags().BoolVar(&web, "html", false, "write pages for a browser")
	return cmd
}

// man writes a page for every command that people see.
func (a *app) man(ctx context.Context, root *cobra.Command, dir, ending string) error {
	today, err := a.today()
	if err != nil {
		return err
	}
	dir = a.userPath(dir)
	if err = os.MkdirAll(dir, 0o777); err != nil {
		return fmt.Errorf("the folder for manual pages can not be made: %w", err)
	}
	commands := visible(root)
	for _, cmd := range commands {
		if err = ctx.Err(); err != nil {
			return err
		}
		text := manPage(cmd, today)
		if ending == webEnding {
			text = webPage(cmd)
		}
		if err = replaceFile(filepath.Join(dir, pageName(cmd)+ending), []byte(text), 0o644); err != nil {
			return err
		}
	}
	_, err = fmt.Fprintf(a.Out, "%d pages are written: %s\n", len(commands), dir)
	return err
}

// What the names of pages end in, where git looks for them.
const (
	manEnding = ".1"
	webEnding = ".html"
)

// pageName is what git calls the page of a command.
func pageName(cmd *cobra.Command) string {
	return strings.ReplaceAll(cmd.CommandPath(), " ", "-")
}

// visible lists a command and those below it, without hidden ones.
func visible(cmd *cobra.Command) []*cobra.Command {
	all := []*cobra.Command{cmd}
	for _, sub := range cmd.Commands() {
		if !sub.Hidden && sub.Name() != "help" {
			all = append(all, visible(sub)...)
		}
	}
	return all
}
