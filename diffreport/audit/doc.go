// Package audit tells how a plant's records kept to the rules over time, and how
// far their history can be relied on.
//
// It is handed commits, parents before children, each with the findings that
// came and went against its first parent, what it did to records, and what is
// known of its signature. From that it follows every nonconformity from the
// commit that introduced it to the one that cleared it, over branches, merges and
// new labels; counts what stood at each release or month; and lists waivers,
// doubtful commits and changes without a later test.
//
// Time is told along one line: from the last commit back over first parents. A
// finding stands from the commit that brought it to this line to the one that
// took it away there; who did either may have done so on a branch.
//
// The package reads no repository, runs no rule and asks no clock. Every figure
// follows from what it was handed, and the report names the commands that give
// the same figure again.
package audit
