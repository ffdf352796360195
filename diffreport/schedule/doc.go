// Package schedule makes the lists that are handed out on a job: the cable
// schedule, the panel schedule and the test schedule, each as rows below headings.
//
// They state what the records do and decide nothing: what a run has to keep to is
// the linter's, what is to be done on site the order's. The package is pure: no
// files, no clock, no format of spreadsheets.
package schedule
