// Package examples holds two example plants and the history of one of them.
//
// The folders saltmarsh-hall and granary-court are plants as people would keep
// them, for reading and for trying things on. The folder story tells how
// Saltmarsh Hall came to be, commit by commit; Story returns it as values, so
// that the demo can replay it into a real repository and the tests can hold
// every state of it against the rules.
//
// Buildings, people and events are invented; the engineering is meant to be
// right. The package only hands out what is embedded in it: it reads no files,
// runs nothing and knows neither git nor the rules.
package examples
