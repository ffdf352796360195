package cli

import (
	"context"
	"strings"

	"github.com/spf13/cobra"

	"homerun/lint/rules"
	"homerun/schema"
	"homerun/schema/console"
)

func newExplain(a *app) *cobra.Command {
	var o nameFlags
	cmd := &cobra.Command{
		Use:   "explain [RULE | RECORD]",
		Short: "what a rule checks and why, or which fields a record has",
		Long: `Explain a rule: what it checks, why it matters on site, the formula, the clause,
how sure the figures are, an example that fails and one that passes. Explain a
kind of record: its fields, their units, and what a change of each means on
site. Without a name, list both; with --names or -z only their names.`,
		Args: func(_ *cobra.Command, args []string) error {
			if len(args) > 1 {
				return &usageError{"explain takes one rule or one kind of record", "see git homerun explain"}
			}
			if len(args) == 1 && o.asked() {
				return &usageError{"bare names are those of all rules and kinds of record", "leave " + schema.Quote(args[0]) + " out"}
			}
			return nil
		},
		RunE: func(cmd *cobra.Command, args []string) error {
			switch {
			case o.asked():
				return o.printAll(a.Out, explainable())
			case len(args) == 0:
				return a.explainAll(cmd.Context())
			}
			return a.explain(cmd.Context(), args[0])
		},
	}
	o.flags(cmd.Flags())
	return cmd
}

// explainable are the names of rules and of kinds of record, in the order in
// which they are listed.
func explainable() []string {
	var names []string
	for _, r := range rules.All() {
		names = append(names, r.Name)
	}
	for _, k := range schema.Kinds() {
		names = append(names, k.Name)
	}
	return names
}

func (a *app) explainAll(ctx context.Context) error {
	page := console.New(a.Out, a.page(ctx, a.Out))
	family := ""
	for _, r := range rules.All() {
		if r.Family() != family {
			if family != "" {
				page.Blank()
			}
			family = r.Family()
			page.Line(0, 0, console.In(console.Strong, family))
		}
		page.Line(2, 30, console.Plain(pad(r.Name, 28)), console.Plain(strings.TrimPrefix(r.Title, "Checks that ")))
	}
	page.Blank()
	page.Line(0, 0, console.In(console.Strong, "records"))
	for _, k := range schema.Kinds() {
		page.Line(2, 30, console.Plain(pad(k.Name, 28)), console.Plain(k.Doc))
	}
	page.Blank()
	page.Line(0, 0, console.Plain("git homerun explain NAME says more about one of them."))
	return page.Err()
}

// pad fills a name to a column; the page keeps its spaces.
func pad(name string, width int) string {
	return name + strings.Repeat(" ", max(1, width-len(name)))
}

func (a *app) explain(ctx context.Context, name string) error {
	if text, ok := rules.PageOf(name); ok {
		return a.explainRule(ctx, text)
	}
	if kind, ok := schema.KindNamed(name); ok {
		return a.explainKind(ctx, kind)
	}
	return &usageError{schema.Quote(name) + " is neither a rule nor a kind of record", didYouMean(name, explainable(), "git homerun explain lists them")}
}

func (a *app) explainRule(ctx context.Context, text rules.Page) error {
	page := console.New(a.Out, a.page(ctx, a.Out))
	page.Line(0, 0, console.In(console.Strong, text.Rule))
	paragraphs(page, text.What)
	for _, s := range []struct{ head, body string }{
		{"why", text.Why},
		{"formula", text.Formula},
		{"source", text.Source},
		{"how sure", text.Sure},
		{"caution", text.Caution},
		{"who decides", text.Decides},
	} {
		if s.body == "" {
			continue
		}
		page.Blank()
		page.Line(0, 0, console.In(console.Strong, s.head))
		paragraphs(page, s.body)
	}
	for _, s := range []struct{ head, body string }{{"before", text.Before}, {"given", text.Given}, {"fails", text.Fails}, {"passes", text.Passes}} {
		if s.body == "" {
			continue
		}
		page.Blank()
		page.Line(0, 0, console.In(console.Strong, s.head))
		for line := range strings.Lines(s.body) {
			page.Line(4, 8, console.Plain(strings.TrimRight(line, "\n")))
		}
	}
	return page.Err()
}

// paragraphs fills text that stands in paragraphs; lines of a list or a
// formula, which begin with a space or a hyphen, stay as they are.
func paragraphs(page *console.Page, text string) {
	var filled []string
	flush := func() {
		if len(filled) > 0 {
			page.Line(2, 2, console.Plain(strings.Join(filled, " ")))
			filled = nil
		}
	}
	for line := range strings.Lines(text) {
		line = strings.TrimRight(line, "\n ")
		switch {
		case line == "":
			flush()
		case strings.HasPrefix(line, " "), strings.HasPrefix(line, "- "):
			flush()
			page.Line(2, 4, console.Plain(line))
		default:
			filled = append(filled, line)
		}
	}
	flush()
}

func (a *app) explainKind(ctx context.Context, k *schema.Kind) error {
	page := console.New(a.Out, a.page(ctx, a.Out))
	page.Line(0, 0, console.In(console.Strong, k.Name))
	page.Line(2, 2, console.Plain(k.Doc))
	page.Blank()
	for _, f := range k.Fields {
		page.Line(2, 4, console.In(console.Strong, f.Name), console.Plain(": "+f.Doc+f.Condition()))
		page.Line(6, 8, console.In(console.Quiet, f.Form()+"; a change means: "+f.Site.String()))
	}
	for _, in := range k.Blocks {
		page.Blank()
		page.Line(2, 4, console.In(console.Strong, in.Name+" { }"), console.Plain(": "+in.Doc+"; see explain "+in.Name))
	}
	return page.Err()
}
