// Package ability works out what a channel can carry: which applications, by
// which limit the next one fails, and how much is left to each limit.
//
// It takes a plant and one of its channels and gives values. The answers are
// those of the published tables in schema/standard; where a figure is not
// confirmed, or something is assumed because the records do not state it, the
// answer says so. There are three answers, and a fourth where the records do
// not tell: carries, carries on a condition, does not carry, and can not be
// told. A condition is never rounded to yes or no.
//
// The package judges and reports nothing: the rules do that. Text and JSON of
// its values are beside them.
package ability
