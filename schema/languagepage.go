package schema

import (
	"fmt"
	"strings"
)

// LanguagePage is the page that explains the record language, in Markdown, made
// from the table of kinds.
func LanguagePage() string {
	var b strings.Builder
	b.WriteString(referenceHead)
	for _, k := range Kinds() {
		referenceKind(&b, k, "##")
		for _, in := range k.Blocks {
			if isTop(in.Name) {
				fmt.Fprintf(&b, "A %s may stand inside; see below.\n\n", in.Name)
				continue
			}
			referenceKind(&b, in, "###")
		}
	}
	return strings.TrimRight(b.String(), "\n") + "\n"
}

const referenceHead = `# The record language

A plant is a folder with a ` + "`plant.hcl`" + `; every ` + "`.hcl`" + ` file in it and below it belongs to it, and neither the order of
records nor the file in which they stand matters. A record is a block: its kind, its label in quotes, and its fields. The
label is the identifier on the wall and is used once in a plant. References are labels; a port is a label, a colon and
a number (` + "`\"1A-A:07\"`" + `), a row of ports adds a hyphen (` + "`\"1A-F:1-12\"`" + `).

Values are literal: a text or quantity in quotes, a whole number, or a list of texts. There are no variables, no
expressions and no heredocs. Comments begin with ` + "`#`" + ` or ` + "`//`" + `. Metric and US units may be mixed.

This page is made from the table in ` + "`schema/kinds.go`" + `. *On site* says what a changed value asks of the crew.

`

func referenceKind(b *strings.Builder, k *Kind, level string) {
	fmt.Fprintf(b, "%s %s\n\n%s.\n\n", level, k.Name, upper(k.Doc))
	b.WriteString("| field | states | written as | on site |\n|---|---|---|---|\n")
	for _, f := range k.Fields {
		fmt.Fprintf(b, "| `%s` | %s%s | %s | %s |\n", f.Name, f.Doc, f.Condition(), f.Form(), f.Site)
	}
	b.WriteString("\n")
}

func upper(sentence string) string { return strings.ToUpper(sentence[:1]) + sentence[1:] }
