package cli

import (
	"embed"
	"fmt"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"homerun/lint/ability"
	"homerun/schema"
)

//go:embed completion
var completionScripts embed.FS

func shells() []string { return []string{"bash", "zsh", "fish"} }

func newCompletion(a *app) *cobra.Command {
	return &cobra.Command{
		Use:   "completion bash | zsh | fish",
		Short: "the script by which a shell completes git homerun",
		Long: `Print the script by which a shell completes the words after git homerun:
commands, options, formats, labels, rules, branches and tags. It works with the
completion that git brings for the same shell, and goes into a file:

    bash  ~/.local/share/bash-completion/completions/git-homerun
    zsh   _git-homerun in a folder of $fpath, before compinit
    fish  ~/.config/fish/conf.d/git-homerun.fish

For example: git homerun completion bash > FILE.`,
		ValidArgs: shells(),
		Args:      exactly(1, "the name of a shell"),
		RunE: func(_ *cobra.Command, args []string) error {
			if !slices.Contains(shells(), args[0]) {
				return &usageError{"there is no completion for " + schema.Quote(args[0]), didYouMean(args[0], shells(), "the shells are bash, zsh and fish")}
			}
			text, err := completionScripts.ReadFile("completion/" + args[0])
			if err != nil {
				return fmt.Errorf("the script for %s: %w", args[0], err)
			}
			_, err = a.Out.Write(text)
			return err
		},
	}
}

// A completer says what may stand in one place of the command line.
type completer = func(cmd *cobra.Command, args []string, begun string) ([]string, cobra.ShellCompDirective)

// completes teaches the commands what their arguments and options take.
func (a *app) completes(root *cobra.Command) {
	arguments := map[string]completer{
		"explain": first(a.explained), "history": first(a.recorded), "trace": first(a.traced), "ready": first(words(ability.Applications()...)),
		"order": first(a.ranges), "labels": first(a.ranges), "takeoff": first(a.ranges), "audit": first(a.ranges),
		"export": first(words(scheduleNames()...)),
	}
	options := map[string]completer{
		"at": a.revisions, "since": a.revisions, "formerly": a.revisions, "on": words(), "until": words(), "field": fieldNames, "plant": a.plants, "color": words("auto", "always", "never"), "in": a.spaces,
		"by": words("day", "today"), "each": words("auto", "tag", "month"), "cut": words("lines", "none"),
		"kind": words(recordKinds()...),
	}
	for _, cmd := range visible(root) {
		switch known, ok := arguments[cmd.Name()]; {
		case ok:
			cmd.ValidArgsFunction = known
		case cmd.Name() == "import": // a file, which the shell completes
		case len(cmd.ValidArgs) == 0 && !cmd.HasSubCommands() && cmd.Name() != "man":
			cmd.ValidArgsFunction = cobra.NoFileCompletions
		}
		for name, known := range options {
			if name == "since" && cmd.Flags().Lookup("until") != nil {
				known = words() // from day to day, and days are typed
			}
			teach(cmd, name, known)
		}
		for _, name := range []string{"format", "standard", "fire-code", "units"} {
			teach(cmd, name, enumerated(cmd, name))
		}
	}
}

// teach registers what an option takes, where the command has it.
func teach(cmd *cobra.Command, option string, known completer) {
	if known == nil || cmd.Flags().Lookup(option) == nil && cmd.PersistentFlags().Lookup(option) == nil {
		return
	}
	if err := cmd.RegisterFlagCompletionFunc(option, known); err != nil {
		panic("cli: completion of --" + option + ": " + err.Error())
	}
}

// enumerated completes an option whose usage begins with the list of what it
// takes.
func enumerated(cmd *cobra.Command, option string) completer {
	flag := cmd.Flags().Lookup(option)
	if flag == nil {
		return nil
	}
	list, _, _ := strings.Cut(strings.ReplaceAll(flag.Usage, " or ", ", "), ";")
	return words(strings.Split(list, ", ")...)
}

// words completes one of a few words.
func words(all ...string) completer {
	return func(*cobra.Command, []string, string) ([]string, cobra.ShellCompDirective) {
		return all, cobra.ShellCompDirectiveNoFileComp
	}
}

// first completes the first argument of a command and no other.
func first(known completer) completer {
	return func(cmd *cobra.Command, args []string, begun string) ([]string, cobra.ShellCompDirective) {
		if len(args) > 0 {
			return nil, cobra.ShellCompDirectiveNoFileComp
		}
		return known(cmd, args, begun)
	}
}

// mostWords bounds what a shell is given to choose from; whoever sees so many
// types another letter.
const mostWords = 1000

// offered are the words that begin as the user did and that a shell may put on
// the command line as they are. A name with any other character is left out:
// it comes from the repository, and a shell would take it for a command.
func offered(begun string, all []string) []string {
	var some []string
	for _, word := range all {
		if strings.HasPrefix(word, begun) && !strings.ContainsFunc(word, special) && word != "" && word[0] != '-' && len(some) < mostWords {
			some = append(some, word)
		}
	}
	return some
}
