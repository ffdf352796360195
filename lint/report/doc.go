// Package report turns what the linter found into text for people and into
// the forms that programs read: JSON, SARIF 2.1.0, JUnit's XML, the annotations
// and the quality report of hosting services. It decides nothing: the order,
// the sums and the severities are those of the findings.
//
// Labels and paths come from whoever wrote the records. Every form shows them
// so that they are nothing but text there: no control character, no directional
// override, no markup, no link and no command of a build log gets through.
//
// The same findings make the same bytes: no report holds the time or the place
// at which it was written.
package report
