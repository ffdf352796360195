package rules

import (
	"strings"

	"homerun/lint"
	"homerun/schema"
)

// The first rules of the family pass on what reading the files and following
// the references found: a rule for each code, so that an owner can waive one
// and not another.

// RecordUnreadable passes on text that is not the record language.
var RecordUnreadable = problemRule(schema.Unreadable, "Checks that every file can be read as records")

// RecordUnknownBlock passes on blocks that no kind of record has.
var RecordUnknownBlock = problemRule(schema.UnknownBlock, "Checks that every block is a kind of record")

// RecordUnknownField passes on fields that the kind does not have.
var RecordUnknownField = problemRule(schema.UnknownField, "Checks that every field is one that the record has")

// RecordMissingField passes on required fields that nobody wrote.
var RecordMissingField = problemRule(schema.MissingField, "Checks that every record states what it has to state")

// RecordValue passes on values that are not of the field's form.
var RecordValue = problemRule(schema.BadValue, "Checks that every value is of its field's form and has its unit")

// RecordLabel passes on labels that can not stand on a wall.
var RecordLabel = problemRule(schema.BadLabel, "Checks that every record has one label, and that it can be printed")

// RecordDuplicateLabel passes on labels that two records have.
var RecordDuplicateLabel = problemRule(schema.DuplicateLabel, "Checks that no two records have the same label")

// RecordUnknownReference passes on labels that lead nowhere.
var RecordUnknownReference = problemRule(schema.UnknownReference, "Checks that every record that is named is there and of the kind that is meant")

func problemRule(code schema.Code, title string) *lint.Rule {
	return &lint.Rule{
		Name: "record-" + string(code), Title: title, Severity: lint.Nonconformity, Reach: lint.Along,
		Check: func(p *lint.Pass) {
			for i := range p.Plant.Problems {
				if problem := &p.Plant.Problems[i]; problem.Code == code {
					p.Report(problemFinding(problem))
				}
			}
		},
	}
}

func problemFinding(problem *schema.Problem) lint.Finding {
	f := lint.Finding{
		Kind: problem.Kind, Record: problem.Label, At: problem.At,
		Message: problem.Message, Next: problem.Next, Related: problem.Also, Source: "record language",
	}
	label := schema.Printable(problem.Label)
	if label != "" && !strings.HasPrefix(f.Message, label+": ") {
		f.Message = label + ": " + f.Message
	}
	// What stands before the first colon names the field; what follows may
	// quote what was written, and would make every new typing a new mistake.
	what, _, _ := strings.Cut(strings.TrimPrefix(f.Message, label+": "), ":")
	if problem.Code == schema.BadValue {
		what, _, _ = strings.Cut(what, `"`)
	}
	f.Key = []string{what}
	if label == "" {
		f.Key = append(f.Key, problem.At.Path)
	}
	return f
}
