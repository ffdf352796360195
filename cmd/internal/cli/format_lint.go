package cli

import (
	"context"
	"io"
	"strings"

	"homerun/lint"
	"homerun/lint/report"
	"homerun/lint/rules"
	"homerun/schema"
)

// lintFormats are the forms in which lint reports, in the order in which they
// are named to people.
func lintFormats() []string {
	return []string{"text", "json", "sarif", "junit", "annotations", "quality"}
}

// showReports writes what was found in all plants, in the form and to the place
// that the user chose.
func (a *app) showReports(ctx context.Context, src *source, reports []*lint.Report, snap *snapshot, o lintFlags) error {
	text := report.TextOptions{Revision: snap.Title, IntroducedOnly: o.introduced, Most: o.most}
	if o.hook {
		// Git shows a hook's complaints on standard error.
		text.Options = a.page(ctx, a.Err)
		return showText(a.Err, reports, text)
	}
	return a.handOver(ctx, o.output, func(w io.Writer) error {
		b := report.Batch{
			Reports: reports, Rules: rules.All(), Explain: about,
			Revision: snap.Name, Compared: o.compares(), IntroducedOnly: o.introduced,
		}
		if o.asked() {
			names := report.Files(b)
			for i := range names {
				names[i] = src.fromHere(names[i])
			}
			return o.printAll(w, names)
		}
		switch o.format {
		case "json":
			return report.JSON(w, b)
		case "sarif":
			return report.SARIF(w, b)
		case "junit":
			return report.JUnit(w, b)
		case "quality":
			return report.Quality(w, b)
		case "annotations":
			return report.Annotations(w, b, text)
		}
		text.Options = a.page(ctx, w)
		return showText(w, reports, text)
	})
}

func showText(w io.Writer, reports []*lint.Report, o report.TextOptions) error {
	for _, r := range reports {
		if err := report.Text(w, r, o); err != nil {
			return err
		}
	}
	return nil
}

// about is a rule's page for programs that show one: what is checked, why, by
// what formula and source, and how sure the figures are.
func about(rule string) string {
	page, ok := rules.PageOf(rule)
	if !ok {
		return ""
	}
	parts := []string{page.What}
	for _, s := range [][2]string{
		{"Why: ", page.Why},
		{"Formula: ", page.Formula},
		{"Source: ", page.Source},
		{"How sure: ", page.Sure},
		{"Caution: ", page.Caution},
		{"Who decides: ", page.Decides},
	} {
		if s[1] != "" {
			parts = append(parts, s[0]+s[1])
		}
	}
	return strings.Join(parts, "\n\n")
}

// noFormat says which formats there are.
func noFormat(word string, formats []string) error {
	next := "the formats are " + strings.Join(formats[:len(formats)-1], ", ") + " and " + formats[len(formats)-1]
	return &usageError{"there is no format " + schema.Quote(word), didYouMean(word, formats, next)}
}
