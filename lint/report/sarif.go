package report

import (
	"io"
	"net/url"
	"strings"

	"github.com/owenrumney/go-sarif/v3/pkg/report/v210/sarif"

	"homerun/lint"
	"homerun/schema"
	"homerun/schema/console"
)

// sourceRoot is the symbol by which SARIF calls the top of the repository.
const sourceRoot = "%SRCROOT%"

// Names of fingerprints in SARIF. The first is our own, with the version of how
// it is made. The second is the only one that a widely used hosting service
// looks at; without it the service makes one of the text of the line.
const (
	fingerprintName     = "homerunFinding/v1"
	lineFingerprintName = "primaryLocationLineHash"
)

// SARIF writes all findings as one run of a SARIF 2.1.0 document (OASIS, with
// errata 01). A waived finding is there with its suppression. Where findings
// were compared with another revision each has a baselineState: new, updated
// for one that is worse, unchanged, or absent for one that is gone. Columns are
// Unicode code points.
func SARIF(w io.Writer, b Batch) error {
	run := sarif.NewRun()
	run.Tool = sarif.NewTool().WithDriver(driver(&b))
	kind := "unicodeCodePoints"
	run.ColumnKind = &kind
	run.Properties = sarif.NewPropertyBag().Add("revision", b.Revision)
	index := make(map[string]int, len(b.Rules))
	for i, r := range b.Rules {
		index[r.Name] = i
	}
	seen := make(identities)
	for _, r := range b.Reports {
		for _, e := range b.entries(r, seen) {
			res := result(e, index)
			if b.Compared {
				res.WithBaselineState(state(e.Finding))
			}
			run.AddResult(res)
		}
		for _, e := range b.gone(r, seen) {
			run.AddResult(absent(result(e, index)))
		}
	}
	doc := sarif.NewReport()
	doc.Schema = "https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json"
	doc.AddRun(run)
	return console.JSON(w, doc)
}

func driver(b *Batch) *sarif.ToolComponent {
	driver := sarif.NewToolComponent().WithName("homerun").WithFullName("git homerun lint").WithIsComprehensive(true)
	for _, r := range b.Rules {
		rule := sarif.NewReportingDescriptor().WithID(r.Name).
			WithShortDescription(multiline(r.Title)).
			WithDefaultConfiguration(sarif.NewReportingConfiguration().WithLevel(level(r.Severity)))
		if about := b.Explain(r.Name); about != "" {
			rule.WithFullDescription(multiline(about)).WithHelp(multiline(about + "\n\ngit homerun explain " + r.Name + " shows examples too."))
		}
		bag := sarif.NewPropertyBag().AddTag(r.Family())
		if r.Safety {
			bag.AddTag("safety")
		}
		driver.AddRule(rule.WithProperties(bag))
	}
	return driver
}

func multiline(text string) *sarif.MultiformatMessageString {
	return sarif.NewMultiformatMessageString().WithText(message(text))
}

func level(s lint.Severity) string {
	if s == lint.Nonconformity {
		return sarif.LevelError
	}
	return sarif.LevelWarning
}

func result(e entry, index map[string]int) *sarif.Result {
	text := e.Message
	if about := sum(e.Finding); about != "" {
		text += "\n" + about
	}
	res := sarif.NewResult().WithRuleID(e.Rule).WithLevel(level(e.Severity)).
		WithMessage(sarif.NewMessage().WithText(message(text))).
		WithPartialFingerprints(map[string]string{fingerprintName: e.id, lineFingerprintName: e.id + ":1"})
	if i, known := index[e.Rule]; known {
		res.WithRuleIndex(i)
	}
	res.AddLocation(location(e.At).WithLogicalLocations(subject(e)))
	for i, n := range e.Related {
		note := n.Message
		if n.Label != "" {
			note = n.Label + ": " + note
		}
		res.AddRelatedLocation(location(n.At).WithID(i + 1).WithMessage(sarif.NewMessage().WithText(message(note))))
	}
	if e.Waiver != "" {
		res.AddSuppression(sarif.NewSuppression().WithKind("external").WithStatus("accepted").WithJustification(justification(e)))
	}
	return res
}

// state is what became of a finding that is there.
func state(f *lint.Finding) string {
	switch {
	case f.Worse:
		return "updated"
	case f.Introduced:
		return "new"
	}
	return "unchanged"
}

// absent makes the result of a finding one that is gone: the rule was evaluated
// there and found nothing. With that kind goes no level (3.27.10), so a service
// that does not look at baselineState takes it for no mistake.
func absent(res *sarif.Result) *sarif.Result {
	return res.WithBaselineState("absent").WithKind("pass").WithLevel(sarif.LevelNone)
}

// justification is the waiver's own reason.
func justification(e entry) string {
	reason := ""
	for _, w := range e.plant.Waivers {
		if text, ok := schema.WaiverReason.In(w.Record); ok && w.Label == e.Waiver {
			reason = ": " + text
		}
	}
	return message("waiver " + e.Waiver + reason)
}

// subject names the record and its plant, which no line of a file tells.
func subject(e entry) []*sarif.LogicalLocation {
	name := e.plant.Name()
	if e.Record != "" {
		name += "/" + e.Record
	}
	at := sarif.NewLogicalLocation().WithFullyQualifiedName(schema.Printable(name))
	if e.Record != "" {
		at.WithName(schema.Printable(e.Record))
	}
	if e.Kind != "" {
		at.WithKind(schema.Printable(e.Kind))
	}
	return []*sarif.LogicalLocation{at}
}

func location(at schema.Location) *sarif.Location {
	file := sarif.NewArtifactLocation().WithURI(uri(at.Path)).WithURIBaseID(sourceRoot)
	region := sarif.NewRegion().WithStartLine(max(1, at.Line)).WithStartColumn(max(1, at.Column))
	if at.EndLine > at.Line || at.EndLine == at.Line && at.EndColumn > at.Column {
		region.WithEndLine(at.EndLine).WithEndColumn(max(1, at.EndColumn))
	}
	return sarif.NewLocation().WithPhysicalLocation(sarif.NewPhysicalLocation().WithArtifactLocation(file).WithRegion(region))
}

// uri is a path of the repository as a relative reference (RFC 3986): a first
// part with a colon would be taken for a scheme.
func uri(path string) string {
	text := (&url.URL{Path: path}).EscapedPath()
	if first, _, _ := strings.Cut(text, "/"); strings.Contains(first, ":") {
		text = "./" + text
	}
	return text
}

// message makes text a plain message: in SARIF braces are doubled (3.11.5), and
// "](" makes a link (3.11.6), which no label may do.
func message(text string) string {
	return strings.NewReplacer("{", "{{", "}", "}}", "](", "] (").Replace(lines(text))
}
