package cli

import (
	"strings"

	"github.com/spf13/cobra"

	"homerun/schema"
)

func newRoot(a *app) *cobra.Command {
	root := &cobra.Command{
		Use:           "git-homerun",
		Annotations:   map[string]string{cobra.CommandDisplayNameAnnotation: "git homerun"},
		Short:         "keep the cable records of buildings in git",
		Long:          rootLong,
		SilenceUsage:  true,
		SilenceErrors: true,
		Args: func(_ *cobra.Command, args []string) error {
			if len(args) == 0 {
				return nil
			}
			return &usageError{"there is no command " + schema.Quote(args[0]), suggestCommand(args[0])}
		},
		RunE: func(cmd *cobra.Command, _ []string) error { return cmd.Help() },
	}
	root.CompletionOptions.HiddenDefaultCmd = true
	root.SetFlagErrorFunc(func(cmd *cobra.Command, err error) error {
		return &usageError{err.Error(), "see " + cmd.CommandPath() + " -h"}
	})
	root.PersistentFlags().StringVar(&a.colourFlag, "color", "auto", "colour: auto, always or never")
	root.PersistentFlags().StringVar(&a.plantFlag, "plant", "", "the plant, by label or folder, where the repository holds several")
	root.AddCommand(
		newInit(a), newLint(a), newExplain(a), newOrder(a), newHistory(a), newFormat(a), newHook(a), newDemo(a),
	)
	return root
}

func commandNames() []string {
	return []string{"init", "lint", "explain", "order", "history", "fmt", "hook", "demo", "help"}
}

func suggestCommand(word string) string {
	if near := schema.Nearest(word, commandNames()); near != "" {
		return "did you mean git homerun " + near + "?"
	}
	return "the commands are " + strings.Join(commandNames(), ", ")
}
