// Package report turns what the linter found into text for people and into
// JSON for programs. It decides nothing: the order, the sums and the severities
// are those of the findings.
package report
