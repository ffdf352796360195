package render

import (
	"io"
	"time"

	"homerun/diffreport/history"
	"homerun/schema/console"
)

// The names below are what other programs rely on, as in an order.
type historyDocument struct {
	Kind    string      `json:"kind"`
	Record  string      `json:"record"`
	Port    int64       `json:"port"`
	Lives   int         `json:"lives"`
	LeftOut int         `json:"left_out"`
	Events  []eventJSON `json:"events"`
}

type eventJSON struct {
	Commit     string      `json:"commit"`
	Time       string      `json:"time"`
	Author     string      `json:"author"`
	Committer  string      `json:"committer"`
	Subject    string      `json:"subject"`
	Signature  string      `json:"signature"`
	Class      string      `json:"class"`
	Kind       string      `json:"kind"`
	Label      string      `json:"label"`
	Former     string      `json:"former"`
	Life       int         `json:"life"`
	Merge      bool        `json:"merge"`
	Via        string      `json:"via"`
	ViaSubject string      `json:"via_subject"`
	ViaBranch  string      `json:"via_branch"`
	Part       string      `json:"part"`
	Place      string      `json:"place"`
	End        string      `json:"end"`
	Order      string      `json:"order"`
	Ordered    []string    `json:"ordered"`
	Parents    []string    `json:"parents"`
	Summary    string      `json:"summary"`
	Why        string      `json:"why"`
	Fields     []fieldJSON `json:"fields"`
}

// HistoryJSON writes the life of a label as one document, newest event first,
// ended by a new line. The error is that of the writer.
func HistoryJSON(w io.Writer, h history.History) error {
	return console.JSON(w, historyDocument{Kind: h.Kind, Record: h.Record, Port: h.Port, Lives: h.Lives, LeftOut: h.LeftOut, Events: each(h.Events, func(e history.Event) eventJSON {
		return eventJSON{
			Commit: e.ID, Time: e.Time.Format(time.RFC3339), Author: e.Author, Committer: e.Committer, Subject: e.Subject, Signature: e.Signature.Word(),
			Class: e.Class.String(), Kind: e.Kind, Label: e.Label, Former: e.Former, Life: e.Life, Merge: e.Merge, Via: e.Via, ViaSubject: e.Merged.Subject, ViaBranch: e.Merged.Branch(),
			Part: e.Part.String(), Place: e.Place, End: e.End, Order: e.Order, Ordered: append([]string{}, e.Orders...), Parents: append([]string{}, e.Parents...),
			Summary: e.Summary, Why: e.Why, Fields: each(e.Fields, asField),
		}
	})})
}
