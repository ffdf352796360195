package cli

import (
	"errors"
	"strings"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"homerun/schema"
)

// This file answers words of the command line that are nearly right.

// didYouMean is the next step after a mistyped word: the one that was meant, or
// otherwise where there is none near it.
func didYouMean(word string, known []string, otherwise string) string {
	return didYouMeanBy(word, known, func(near string) string { return near }, otherwise)
}

// didYouMeanBy names what was meant as it is written on the command line.
func didYouMeanBy(word string, known []string, written func(near string) string, otherwise string) string {
	if near := schema.Nearest(word, known); near != "" {
		return "did you mean " + written(near) + "?"
	}
	return otherwise
}

func noCommand(word string) error {
	names := commandNames()
	next := didYouMeanBy(word, names, func(near string) string { return "git homerun " + near }, "the commands are "+strings.Join(names, ", "))
	return &usageError{"there is no command " + schema.Quote(word), next}
}

// flagMistake says in our words what is wrong with an option.
func flagMistake(cmd *cobra.Command, err error) error {
	see := "see " + cmd.CommandPath() + " -h"
	if e, ok := errors.AsType[*pflag.NotExistError](err); ok {
		name := e.GetSpecifiedName()
		if e.GetSpecifiedShortnames() != "" {
			return &usageError{cmd.CommandPath() + " has no option " + schema.Quote("-"+name), see}
		}
		next := didYouMeanBy(name, flagNames(cmd), func(near string) string { return "--" + near }, see)
		return &usageError{cmd.CommandPath() + " has no option " + schema.Quote("--"+name), next}
	}
	if e, ok := errors.AsType[*pflag.ValueRequiredError](err); ok {
		return &usageError{"--" + e.GetFlag().Name + " says what: " + e.GetFlag().Usage, see}
	}
	if e, ok := errors.AsType[*pflag.InvalidValueError](err); ok {
		return &usageError{"--" + e.GetFlag().Name + " can not be " + schema.Quote(e.GetValue()) + ": it takes " + taken(e.GetFlag()), see}
	}
	return &usageError{err.Error(), see}
}

// taken says what the value of an option is.
func taken(f *pflag.Flag) string {
	switch f.Value.Type() {
	case "bool":
		return "no value, true or false"
	case "int":
		return "a whole number"
	}
	return "a " + f.Value.Type()
}

// flagNames are the options of a command that people see.
func flagNames(cmd *cobra.Command) []string {
	var names []string
	cmd.Flags().VisitAll(func(f *pflag.Flag) {
		if !f.Hidden {
			names = append(names, f.Name)
		}
	})
	return names
}
