// Package lint is the engine that holds a plant against the rules.
//
// A Rule is a value with a function; the rules themselves are in lint/rules.
// A rule sees one plant and reports findings, each with the sum that led to it.
// The engine applies the owner's policies and waivers, sorts, and tells what a
// change introduced from what stood there before.
//
// A mistake in the records is a finding and the other rules go on. A rule that
// panics is our own mistake: Run returns an error that names the rule, since a
// linter that passes over a rule in silence is worse than none.
package lint
