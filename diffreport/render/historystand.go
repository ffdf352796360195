package render

import (
	"fmt"
	"io"
	"slices"
	"time"

	"homerun/diffreport/history"
	"homerun/schema/console"
)

// StandingText writes what was asked as it stood on a day, a paragraph a record.
// The error is that of the writer.
func StandingText(w io.Writer, s history.Stand, o console.Options) error {
	page := console.New(w, o)
	r := &s.Revision
	page.Line(0, 2, console.In(console.Strong, portText(s.Asked, s.Port)), console.Plain(" on "+s.Day+", as of commit "+short(r.ID)))
	page.Terms(2, [2]string{"entered", r.Time.Format("2006-01-02 15:04 -0700")}, [2]string{"commit", r.Subject}, [2]string{"signature", r.Signature.String()})
	if len(s.Records) == 0 {
		page.Blank()
		page.Line(0, 2, console.Plain("nothing bore the label then"))
	}
	for i := range s.Records {
		one := &s.Records[i]
		page.Blank()
		page.Line(0, 4, console.In(console.Strong, one.Label), console.Plain(", "+one.Kind+standingAt(s, one)))
		page.Terms(4, append(slices.Clip(one.Fields), [2]string{"written in", fmt.Sprintf("%s, line %d", one.Path, one.Line)})...)
	}
	return page.Err()
}

// standingAt says where a record lay that is shown for its place.
func standingAt(s history.Stand, one *history.Stated) string {
	switch {
	case one.Place == "":
		return ""
	case s.Port != 0:
		return " on " + portText(one.Place, s.Port) + " with its end " + one.End
	}
	return " in " + one.Place
}

// The names below are what other programs rely on, as in a history.
type standDocument struct {
	Record    string       `json:"record"`
	Port      int64        `json:"port"`
	On        string       `json:"on"`
	Commit    string       `json:"commit"`
	Time      string       `json:"time"`
	Author    string       `json:"author"`
	Committer string       `json:"committer"`
	Subject   string       `json:"subject"`
	Signature string       `json:"signature"`
	Records   []statedJSON `json:"records"`
}

type statedJSON struct {
	Kind   string      `json:"kind"`
	Label  string      `json:"label"`
	Path   string      `json:"path"`
	Line   int         `json:"line"`
	Place  string      `json:"place"`
	End    string      `json:"end"`
	Fields []valueJSON `json:"fields"`
}

type valueJSON struct {
	Name  string `json:"name"`
	Value string `json:"value"`
}

// StandingJSON writes what was asked as it stood on a day as one document, ended
// by a new line. The error is that of the writer.
func StandingJSON(w io.Writer, s history.Stand) error {
	r := &s.Revision
	return console.JSON(w, standDocument{
		Record: s.Asked, Port: s.Port, On: s.Day, Commit: r.ID, Time: r.Time.Format(time.RFC3339), Author: r.Author, Committer: r.Committer, Subject: r.Subject,
		Signature: r.Signature.Word(), Records: each(s.Records, func(one history.Stated) statedJSON {
			return statedJSON{
				Kind: one.Kind, Label: one.Label, Path: one.Path, Line: one.Line, Place: one.Place, End: one.End,
				Fields: each(one.Fields, func(f [2]string) valueJSON { return valueJSON{Name: f[0], Value: f[1]} }),
			}
		}),
	})
}
