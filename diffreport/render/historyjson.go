package render

import (
	"io"
	"time"

	"homerun/diffreport/history"
	"homerun/schema/console"
)

// The names below are what other programs rely on, as in an order.
type historyDocument struct {
	Kind   string      `json:"kind"`
	Record string      `json:"record"`
	Lives  int         `json:"lives"`
	Events []eventJSON `json:"events"`
}

type eventJSON struct {
	Commit    string      `json:"commit"`
	Time      string      `json:"time"`
	Author    string      `json:"author"`
	Committer string      `json:"committer"`
	Subject   string      `json:"subject"`
	Signature string      `json:"signature"`
	Class     string      `json:"class"`
	Kind      string      `json:"kind"`
	Label     string      `json:"label"`
	Former    string      `json:"former"`
	Life      int         `json:"life"`
	Merge     bool        `json:"merge"`
	Via       string      `json:"via"`
	Summary   string      `json:"summary"`
	Why       string      `json:"why"`
	Fields    []fieldJSON `json:"fields"`
}

// HistoryJSON writes the life of a label as one document, newest event first,
// ended by a new line. The error is that of the writer.
func HistoryJSON(w io.Writer, h history.History) error {
	return console.JSON(w, historyDocument{Kind: h.Kind, Record: h.Record, Lives: h.Lives, Events: each(h.Events, func(e history.Event) eventJSON {
		return eventJSON{
			Commit: e.ID, Time: e.Time.Format(time.RFC3339), Author: e.Author, Committer: e.Committer, Subject: e.Subject, Signature: e.Signature.Word(),
			Class: e.Class.String(), Kind: e.Kind, Label: e.Label, Former: e.Former, Life: e.Life, Merge: e.Merge, Via: e.Via,
			Summary: e.Summary, Why: e.Why, Fields: each(e.Fields, asField),
		}
	})})
}
