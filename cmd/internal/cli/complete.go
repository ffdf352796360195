package cli

import (
	"context"
	"slices"
	"strings"
	"unicode"

	"github.com/spf13/cobra"

	"homerun/schema"
	"homerun/schema/plant"
)

// special says whether a shell could take a character for more than itself.
func special(r rune) bool {
	return !unicode.IsLetter(r) && !unicode.IsDigit(r) && !strings.ContainsRune("._/+:@%,-=^", r)
}

// explained completes a rule or a kind of record.
func (a *app) explained(_ *cobra.Command, _ []string, begun string) ([]string, cobra.ShellCompDirective) {
	return offered(begun, explainable()), cobra.ShellCompDirectiveNoFileComp
}

// recorded completes the label of a record in the working tree. What can not be
// read is not offered, and no mistake spoils the line that the user is typing.
func (a *app) recorded(cmd *cobra.Command, _ []string, begun string) ([]string, cobra.ShellCompDirective) {
	var all []string
	a.inWorktree(cmd.Context(), func(snap *snapshot) {
		for _, p := range snap.Plants {
			for _, k := range schema.Kinds() {
				all = append(all, p.Labels(k.Name)...)
			}
		}
	})
	slices.Sort(all)
	return offered(begun, slices.Compact(all)), cobra.ShellCompDirectiveNoFileComp
}

// traced completes a label, or behind a colon a port of what it names.
func (a *app) traced(cmd *cobra.Command, args []string, begun string) ([]string, cobra.ShellCompDirective) {
	cut := strings.LastIndexByte(begun, ':')
	if cut < 0 {
		return a.recorded(cmd, args, begun)
	}
	var all []string
	a.inWorktree(cmd.Context(), func(snap *snapshot) {
		for _, p := range snap.Plants {
			item, _ := p.Find(begun[:cut])
			if h, ok := item.(*plant.Holder); ok {
				for i := range h.Ports {
					all = append(all, h.Ports[i].String())
				}
			}
		}
	})
	return offered(begun, all), cobra.ShellCompDirectiveNoFileComp
}

// fieldNames completes the name of a field.
func fieldNames(_ *cobra.Command, _ []string, begun string) ([]string, cobra.ShellCompDirective) {
	var all []string
	for _, k := range schema.Kinds() {
		for _, f := range k.Fields {
			all = append(all, f.Name)
		}
	}
	slices.Sort(all)
	return offered(begun, slices.Compact(all)), cobra.ShellCompDirectiveNoFileComp
}

// spaces completes the label of a space.
func (a *app) spaces(cmd *cobra.Command, _ []string, begun string) ([]string, cobra.ShellCompDirective) {
	var all []string
	a.inWorktree(cmd.Context(), func(snap *snapshot) {
		for _, p := range snap.Plants {
			all = append(all, p.Labels(schema.KindSpace)...)
		}
	})
	slices.Sort(all)
	return offered(begun, slices.Compact(all)), cobra.ShellCompDirectiveNoFileComp
}

// plants completes the label of a plant.
func (a *app) plants(cmd *cobra.Command, _ []string, begun string) ([]string, cobra.ShellCompDirective) {
	var all []string
	a.plantFlag = ""
	a.inWorktree(cmd.Context(), func(snap *snapshot) {
		for _, p := range snap.Plants {
			all = append(all, p.Name())
		}
	})
	return offered(begun, all), cobra.ShellCompDirectiveNoFileComp
}

func (a *app) inWorktree(ctx context.Context, look func(*snapshot)) {
	src, err := a.open(ctx)
	if err != nil {
		return
	}
	defer src.close()
	if snap, err := src.worktree(ctx); err == nil {
		look(snap)
	}
}

// revisions completes a branch or a tag.
func (a *app) revisions(cmd *cobra.Command, _ []string, begun string) ([]string, cobra.ShellCompDirective) {
	said, err := a.git(cmd.Context(), a.stand, "for-each-ref", "--format=%(refname:short)", "refs/heads", "refs/tags", "refs/remotes")
	if err != nil {
		return nil, cobra.ShellCompDirectiveNoFileComp
	}
	return offered(begun, append([]string{"HEAD"}, strings.Fields(said)...)), cobra.ShellCompDirectiveNoFileComp
}

// ranges completes both ends of a range of commits.
func (a *app) ranges(cmd *cobra.Command, args []string, begun string) ([]string, cobra.ShellCompDirective) {
	base, dots := "", strings.LastIndex(begun, "..")
	if dots >= 0 {
		base, begun = begun[:dots+2], begun[dots+2:]
	}
	all, directive := a.revisions(cmd, args, begun)
	for i := range all {
		all[i] = base + all[i]
	}
	return all, directive
}
