package takeoff

import (
	"io"

	"homerun/schema/console"
)

// The names below are what other programs rely on: fields are added, never
// renamed or taken away.
type document struct {
	Plant        string     `json:"plant"`
	Base         string     `json:"base,omitempty"`
	Head         string     `json:"head"`
	WastePercent int        `json:"waste_percent"`
	ReelMetres   float64    `json:"reel_metres,omitempty"`
	Items        []itemJSON `json:"items"`
	NotCounted   []string   `json:"not_counted"`
}

type itemJSON struct {
	Group       string     `json:"group"`
	Name        string     `json:"name"`
	Count       int        `json:"count,omitempty"`
	Metres      float64    `json:"metres,omitempty"`
	GrossMetres float64    `json:"gross_metres,omitempty"`
	Reels       *reelsJSON `json:"reels,omitempty"`
	Parts       []partJSON `json:"parts"`
	Unknown     []string   `json:"unknown"`
}

type reelsJSON struct {
	Least   int      `json:"least"`
	Whole   int      `json:"whole"`
	TooLong []string `json:"too_long"`
}

type partJSON struct {
	Record string  `json:"record"`
	Count  int     `json:"count"`
	Metres float64 `json:"metres,omitempty"`
}

// JSON writes one document, ended by a new line.
func JSON(w io.Writer, t Takeoff) error {
	doc := document{
		Plant: t.Plant, Base: t.Base, Head: t.Head, WastePercent: t.Waste, ReelMetres: t.Reel.Metres(),
		Items: make([]itemJSON, 0, len(t.Items)), NotCounted: list(t.Left),
	}
	for i := range t.Items {
		doc.Items = append(doc.Items, t.Items[i].json())
	}
	return console.JSON(w, doc)
}

func (it *Item) json() itemJSON {
	out := itemJSON{
		Group: it.Group, Name: it.Name, Count: it.Count, Metres: it.Length.Metres(), GrossMetres: it.Gross.Metres(),
		Parts: make([]partJSON, 0, len(it.Parts)), Unknown: list(it.Unknown),
	}
	if it.Reels != nil {
		out.Reels = &reelsJSON{it.Reels.Least, it.Reels.Whole, list(it.Reels.TooLong)}
	}
	for _, p := range it.Parts {
		out.Parts = append(out.Parts, partJSON{p.Record, p.Count, p.Length.Metres()})
	}
	return out
}

func list(all []string) []string {
	if all == nil {
		return []string{}
	}
	return all
}
