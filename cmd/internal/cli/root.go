package cli

import (
	"strings"

	"github.com/spf13/cobra"
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
			return noCommand(args[0])
		},
		RunE: func(cmd *cobra.Command, _ []string) error { return cmd.Help() },
	}
	root.CompletionOptions.DisableDefaultCmd = true
	root.SetFlagErrorFunc(flagMistake)
	root.PersistentFlags().StringVar(&a.colourFlag, "color", "auto", "colour: auto, always or never")
	root.PersistentFlags().StringVar(&a.plantFlag, "plant", "", "the plant, by label or folder, where the repository holds several")
	root.SetUsageTemplate(usageTemplate)
	root.SetHelpTemplate(helpTemplate())
	root.Version = toolVersion()
	root.SetVersionTemplate("git homerun version {{.Version}}\n")
	root.SetHelpCommand(&cobra.Command{Use: "help [COMMAND]", Short: "what a command does and which options it has", RunE: help, ValidArgs: commandNames()})
	root.AddCommand(
		newInit(a), newLint(a), newExplain(a), newOrder(a), newLabels(a), newHistory(a), newAudit(a), newTrace(a), newReady(a), newTakeoff(a), newExport(a), newImport(a), newFormat(a), newHook(a), newSetup(a), newMergeDriver(a), newDiffDriver(a), newDemo(a), newMan(a), newCompletion(a),
	)
	a.completes(root)
	for _, cmd := range visible(root) {
		cmd.DisableFlagsInUseLine = true // options stand below
	}
	return root
}

// help is the way to every command's page that git does not take for a manual
// page of its own.
func help(cmd *cobra.Command, args []string) error {
	about, rest, err := cmd.Root().Find(args)
	if err != nil || len(rest) > 0 {
		return noCommand(strings.Join(args, " "))
	}
	about.InitDefaultHelpFlag() // as it is there after -h
	about.InitDefaultVersionFlag()
	return about.Help()
}

func commandNames() []string {
	return []string{"init", "lint", "explain", "order", "labels", "history", "audit", "trace", "ready", "takeoff", "export", "import", "fmt", "hook", "setup", "demo", "man", "completion", "help"}
}
