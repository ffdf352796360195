package cli

import (
	"fmt"
	"html"
	"strings"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"homerun/schema/unit"
)

// A chapter of a manual page: terms with what they mean.
type chapter struct {
	head  string
	terms [][2]string
}

// chapters are what the page of the program says besides its commands.
func chapters() []chapter {
	return []chapter{
		{"EXIT STATUS", exitStatuses()},
		{"CONFIGURATION", [][2]string{
			{"homerun.format", "the form in which lint reports where --format does not say: text, json, sarif, junit, annotations or quality"},
			{"homerun.most", "how many findings lint shows as text where --most does not say; 0 shows all"},
			{"homerun.protected", "the branches that a server guards, several values, such as main and release/*; the one that HEAD names where nothing is set"},
			{"color.homerun", "colour: always, never or auto; color.ui where it is not set"},
			{"pager.homerun", "false, or a pager of its own for long text, as git takes it; otherwise it is the one of GIT_PAGER, of your own core.pager or of PAGER. The core.pager of a repository is not run"},
		}},
		{"ENVIRONMENT", [][2]string{
			{"HOMERUN_TODAY", "the day by which waivers are judged, such as 2026-03-31, for repeating a check as it was"},
			{"NO_COLOR", "no colour, where it is not empty"},
			{"GIT_PAGER, PAGER, LESS", "as git takes them; LESS is FRX where it is not set"},
			{"GIT_DIR, GIT_WORK_TREE, GIT_INDEX_FILE, GIT_PREFIX and others", "as git takes them"},
		}},
		{"FILES", [][2]string{
			{"plant.hcl", "begins a plant: every .hcl file in its folder and below belongs to it"},
		}},
	}
}

// manPage is a command's page in the language of man (man(7), groff_man(7)). It
// depends on the commands and the day, and on nothing else.
func manPage(cmd *cobra.Command, today unit.Date) string {
	var b strings.Builder
	fmt.Fprintf(&b, ".TH %s 1 %s homerun \"Git Manual\"\n", strings.ToUpper(pageName(cmd)), today)
	b.WriteString(".SH NAME\n" + roff(pageName(cmd)) + ` \- ` + roff(cmd.Short) + "\n")
	b.WriteString(".SH SYNOPSIS\n.nh\n" + roff(synopsis(cmd)) + "\n.hy\n")
	b.WriteString(".SH DESCRIPTION\n" + paragraphsOf(described(cmd)))
	var commands [][2]string
	for _, sub := range visible(cmd)[1:] {
		if sub.Parent() == cmd {
			commands = append(commands, [2]string{sub.Name(), sub.Short})
		}
	}
	section(&b, chapter{"COMMANDS", commands})
	section(&b, chapter{"OPTIONS", options(cmd.LocalFlags())})
	section(&b, chapter{"OPTIONS OF EVERY COMMAND", options(cmd.InheritedFlags())})
	if !cmd.HasParent() {
		for _, c := range chapters() {
			section(&b, c)
		}
	}
	b.WriteString(".SH SEE ALSO\n" + seeAlso(cmd))
	return b.String()
}

func section(b *strings.Builder, c chapter) {
	if len(c.terms) == 0 {
		return
	}
	b.WriteString(".SH " + c.head + "\n")
	for _, t := range c.terms {
		b.WriteString(".TP\n.B " + roff(t[0]) + "\n" + roff(t[1]) + "\n")
	}
}

// synopsis is how the command is called.
func synopsis(cmd *cobra.Command) string {
	if cmd.HasAvailableSubCommands() {
		return cmd.CommandPath() + " COMMAND"
	}
	return cmd.UseLine()
}

func described(cmd *cobra.Command) string {
	if cmd.Long == "" {
		return strings.ToUpper(cmd.Short[:1]) + cmd.Short[1:] + "."
	}
	return cmd.Long
}

// options are the flags that people see, with what they take.
func options(flags *pflag.FlagSet) [][2]string {
	var list [][2]string
	flags.VisitAll(func(f *pflag.Flag) {
		if f.Hidden {
			return
		}
		name := "--" + f.Name
		if f.Shorthand != "" {
			name = "-" + f.Shorthand + ", " + name
		}
		takes, usage := pflag.UnquoteUsage(f)
		if takes != "" {
			name += " " + takes
		}
		if f.DefValue != "" && f.DefValue != "false" {
			usage += " (default " + f.DefValue + ")"
		}
		list = append(list, [2]string{name, usage})
	})
	return list
}

// paragraphsOf turns text in paragraphs into man's language. A paragraph that
// is indented stands as it is written.
func paragraphsOf(text string) string {
	var b strings.Builder
	for i, part := range strings.Split(strings.TrimSpace(text), "\n\n") {
		if i > 0 {
			b.WriteString(".PP\n")
		}
		indented := strings.HasPrefix(part, " ")
		if indented {
			b.WriteString(".nf\n")
		}
		for line := range strings.Lines(part) {
			b.WriteString(roff(strings.TrimRight(line, "\n")) + "\n")
		}
		if indented {
			b.WriteString(".fi\n")
		}
	}
	return b.String()
}

// roff makes a line of text nothing but text to man: a hyphen stays the one that
// is typed, and a line that begins with a point is no request.
func roff(line string) string {
	line = strings.NewReplacer(`\`, `\e`, "-", `\-`).Replace(line)
	if strings.HasPrefix(line, ".") || strings.HasPrefix(line, "'") {
		line = `\&` + line
	}
	return line
}

func seeAlso(cmd *cobra.Command) string {
	var b strings.Builder
	for _, other := range visible(cmd.Root()) {
		if other != cmd {
			b.WriteString(".BR " + roff(pageName(other)) + " (1),\n")
		}
	}
	return strings.TrimSuffix(b.String(), ",\n") + "\n"
}

// webPage is a command's help as a page for a browser: text, and links to the
// other pages in the same folder.
func webPage(cmd *cobra.Command) string {
	title := html.EscapeString(pageName(cmd))
	var b strings.Builder
	b.WriteString("<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n<title>" + title + "</title>\n</head>\n<body>\n<h1>" + title + "</h1>\n<pre>\n")
	b.WriteString(html.EscapeString(described(cmd) + "\n\n" + cmd.UsageString()))
	if !cmd.HasParent() {
		for _, c := range chapters() {
			b.WriteString("\n" + c.head + "\n")
			for _, t := range c.terms {
				b.WriteString(html.EscapeString("  "+t[0]+"\n      "+t[1]) + "\n")
			}
		}
	}
	b.WriteString("</pre>\n<ul>\n")
	for _, other := range visible(cmd.Root()) {
		name := html.EscapeString(pageName(other))
		b.WriteString("<li><a href=\"" + name + webEnding + "\">" + name + "</a></li>\n")
	}
	b.WriteString("</ul>\n</body>\n</html>\n")
	return b.String()
}
