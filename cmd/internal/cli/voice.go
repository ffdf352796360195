package cli

import (
	"errors"
	"strings"

	"homerun/schema/console"
	"homerun/schema/vcs"
)

// This file holds the sentences that the tool says about itself and about what
// it could not do, so that it speaks in one voice.

const rootLong = `Keep the cable records of buildings in git: check every run before it is
pulled, turn a change into a work order, follow a label through the years.

It checks records. It is no design approval and no inspection: the local code
in force, the authority having jurisdiction and licensed practice decide.`

// usageTemplate is how every command shows its options, in 80 columns.
const usageTemplate = `usage:
{{if .HasAvailableSubCommands}}  {{.CommandPath}} COMMAND{{else}}  {{.UseLine}}{{end}}
{{if .HasAvailableSubCommands}}
commands:
{{range .Commands}}{{if .IsAvailableCommand}}  {{rpad .Name .NamePadding}}  {{.Short}}
{{end}}{{end}}{{end}}{{if .HasAvailableLocalFlags}}
options:
{{.LocalFlags.FlagUsagesWrapped 80 | trimTrailingWhitespaces}}
{{end}}{{if .HasAvailableInheritedFlags}}
options of every command:
{{.InheritedFlags.FlagUsagesWrapped 80 | trimTrailingWhitespaces}}
{{end}}{{if .HasAvailableSubCommands}}
{{.CommandPath}} COMMAND -h says more about a command.
{{end}}`

// helpTemplate is how help is shown: what a command does, how it is called, and
// for the program as a whole what it says to the shell.
func helpTemplate() string {
	var b strings.Builder
	b.WriteString("{{with (or .Long .Short)}}{{. | trimTrailingWhitespaces}}\n\n{{end}}{{.UsageString}}{{if not .HasParent}}\nexit status:\n")
	console.New(&b, console.Options{}).Terms(2, exitStatuses()...)
	b.WriteString("{{end}}")
	return b.String()
}

// complain prints an error in plain words, and what to do next.
func (a *app) complain(err error) {
	// One line a sentence, whatever its length: paths in it are to be copied.
	page := console.New(a.Err, console.Options{Width: 1 << 16})
	page.Line(0, 2, console.Plain("git homerun: "+err.Error()))
	if next := remedy(err); next != "" {
		page.Line(2, 2, console.Plain(next))
	}
}

// remedy is the next step after a failure.
func remedy(err error) string {
	if usage, ok := errors.AsType[*usageError](err); ok {
		return usage.next
	}
	if none, ok := errors.AsType[*noPlantError](err); ok {
		return none.next
	}
	for _, known := range []struct {
		err  error
		next string
	}{
		{vcs.ErrNoGit, "install git, or put it on PATH"},
		{vcs.ErrUnsafe, "if the repository is to be trusted, follow git's advice above"},
		{vcs.ErrNotRepository, "go to the repository of your records, or make one here: git init"},
		{vcs.ErrNoCommit, "commit the records first, or look at the working tree: git homerun lint"},
		{vcs.ErrShallow, "fetch what came before: git fetch --unshallow"},
		{vcs.ErrUnknownRevision, "git log --oneline --all lists the commits; a date is written 2026-03-31"},
		{vcs.ErrMissingObject, "fetch what a partial clone lacks: git fetch --refetch --no-filter; or check the repository: git fsck"},
		{vcs.ErrNoWorktree, "name a commit: git homerun lint --at HEAD"},
		{vcs.ErrUnreadable, "give yourself permission to read the folder, then try again"},
		{vcs.ErrNoMergeBase, "write BASE..HEAD with two dots to compare the commits themselves"},
	} {
		if errors.Is(err, known.err) {
			return known.next
		}
	}
	return ""
}

// noPlantError says that there is nothing to check.
type noPlantError struct {
	message, next string
	// records is set where there are records all the same: elsewhere, or of no
	// plant.
	records bool
}

// Error is the sentence.
func (e *noPlantError) Error() string { return e.message }

func isNoPlant(err error) bool {
	_, ok := errors.AsType[*noPlantError](err)
	return ok
}

// isBare says whether a state holds no records at all.
func isBare(err error) bool {
	none, ok := errors.AsType[*noPlantError](err)
	return ok && !none.records
}

func isNoCommit(err error) bool { return errors.Is(err, vcs.ErrNoCommit) }

const (
	noPlantNext    = "write one with: git homerun init"
	shallowWarning = "this clone is shallow: what happened before its first commit is not here (git fetch --unshallow)"
)
