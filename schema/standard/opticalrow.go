package standard

import "homerun/schema/unit"

// opticalRow is one published reach. Lengths are in metres, the loss in hundredths of a
// decibel.
type opticalRow struct {
	application OpticalApplication
	first, last Fibre // the classes that share the row
	sure        int64
	possible    int64 // 0: no more than sure
	loss        int64 // 0: not found
	reachSure   Confidence
	lossSure    Confidence
	condition   string
	doubt       Confidence
	note        string
}

// Conditions on which a reach depends.
const (
	modeConditioning = "mode-conditioning cords launch the light at both ends"
	makersReach      = "the maker of the equipment states the longer reach"
)

// opticalRows are the reaches of IEEE 802.3. Where sources disagree the note names the other
// figure.
var opticalRows = []opticalRow{
	{Base1000SX, OM1, OM1, 275, 0, 260, Confirmed, Confirmed, "", 0, "220 m over fibre of 160 MHz km, older than the class"},
	{Base1000SX, OM2, OM2, 550, 0, 356, Confirmed, Confirmed, "", 0, ""},
	{Base1000SX, OM3, OM3, 550, 0, 356, Conflicting, Confirmed, "", 0, "one source states no reach for OM3, another more than 550 m"},
	{Base1000SX, OM4, OM4, 550, 1000, 0, Conflicting, 0, makersReach, Conflicting, "the figure of OM3; makers state 1000 m"},
	{Base1000LX, OM1, OM2, 0, 550, 235, Confirmed, FromMemory, modeConditioning, FromMemory, ""},
	{Base1000LX, OM3, OM4, 0, 550, 0, Confirmed, 0, modeConditioning, FromMemory, ""},
	{Base1000LX, OS1, OS2, 5000, 10_000, 457, Confirmed, FromMemory, makersReach, Conflicting, "10 km is the reach of 1000BASE-LX10"},
	{Base10GSR, OM1, OM1, 33, 0, 240, Confirmed, Conflicting, "", 0, "loss 1.6 dB in another quotation"},
	{Base10GSR, OM2, OM2, 82, 0, 230, Confirmed, Conflicting, "", 0, "loss 1.8 dB in another quotation"},
	{Base10GSR, OM3, OM3, 300, 0, 260, Confirmed, Confirmed, "", 0, ""},
	{Base10GSR, OM4, OM4, 400, 0, 290, Confirmed, Confirmed, "", 0, ""},
	{Base10GSR, OM5, OM5, 400, 0, 0, FromMemory, 0, "", 0, ""},
	{Base10GLRM, OM1, OM2, 0, 220, 190, Confirmed, Confirmed, modeConditioning, Confirmed, ""},
	{Base10GLRM, OM3, OM3, 220, 0, 190, Conflicting, Confirmed, "", 0, "260 m in another quotation"},
	{Base10GLRM, OM4, OM4, 220, 0, 0, FromMemory, 0, "", 0, ""},
	{Base10GLR, OS1, OS2, 10_000, 0, 620, Confirmed, FromMemory, "", 0, ""},
	{Base10GER, OS1, OS2, 40_000, 0, 1100, Confirmed, Confirmed, "", 0, "the loss takes in 1.5 dB of connections"},
	{Base25GSR, OM3, OM3, 70, 0, 180, FromMemory, FromMemory, "", 0, ""},
	{Base25GSR, OM4, OM4, 100, 0, 190, Confirmed, Confirmed, "", 0, ""},
	{Base25GSR, OM5, OM5, 100, 0, 190, FromMemory, FromMemory, "", 0, ""},
	{Base25GLR, OS1, OS2, 10_000, 0, 630, FromMemory, FromMemory, "", 0, ""},
	{Base40GSR4, OM3, OM3, 100, 0, 190, Confirmed, FromMemory, "", 0, ""},
	{Base40GSR4, OM4, OM4, 150, 0, 150, Confirmed, Confirmed, "", 0, "the loss takes in 1.0 dB of connections"},
	{Base40GSR4, OM5, OM5, 150, 0, 150, FromMemory, FromMemory, "", 0, ""},
	{Base40GLR4, OS1, OS2, 10_000, 0, 670, Confirmed, FromMemory, "", 0, ""},
	{Base100GSR10, OM3, OM3, 100, 0, 190, Confirmed, Confirmed, "", 0, ""},
	{Base100GSR10, OM4, OM4, 150, 0, 150, Confirmed, Confirmed, "", 0, "the loss takes in 1.0 dB of connections"},
	{Base100GSR10, OM5, OM5, 150, 0, 0, FromMemory, 0, "", 0, ""},
	{Base100GSR4, OM3, OM3, 70, 0, 180, FromMemory, FromMemory, "", 0, ""},
	{Base100GSR4, OM4, OM5, 100, 0, 190, FromMemory, FromMemory, "", 0, ""},
	{Base100GLR4, OS1, OS2, 10_000, 0, 630, Confirmed, FromMemory, "", 0, ""},
	{Base100GDR, OS1, OS2, 500, 0, 300, Confirmed, FromMemory, "", 0, ""},
	{Base400GSR8, OM3, OM3, 70, 0, 180, Confirmed, Confirmed, "", 0, ""},
	{Base400GSR8, OM4, OM5, 100, 0, 190, Confirmed, Confirmed, "", 0, ""},
	{Base400GSR42, OM3, OM3, 70, 0, 170, Confirmed, Confirmed, "", 0, ""},
	{Base400GSR42, OM4, OM4, 100, 0, 180, Confirmed, Confirmed, "", 0, ""},
	{Base400GSR42, OM5, OM5, 150, 0, 200, Confirmed, Confirmed, "", 0, ""},
	{Base400GDR4, OS1, OS2, 500, 0, 300, Confirmed, FromMemory, "", 0, ""},
}

// covers reports whether the row holds for a class.
func (r opticalRow) covers(f Fibre) bool { return f >= r.first && f <= r.last }

// reach turns the row into an answer.
func (r opticalRow) reach(w Wavelength) OpticalReach {
	out := OpticalReach{
		Sure: unit.Length(r.sure) * unit.Metre, Possible: unit.Length(max(r.sure, r.possible)) * unit.Metre,
		Condition: r.condition, Wavelength: w, Source: ethernet(r.application.String() + ", reach"),
	}
	out.Source.Confidence = r.reachSure
	out.Source = out.Source.noted(r.note)
	if r.condition != "" {
		out.Doubt = ethernet(r.application.String() + ", launch and reach")
		out.Doubt.Confidence = r.doubt
	}
	if r.loss > 0 {
		out.Loss = unit.Loss(r.loss) * unit.Decibel / 100
		out.LossSource = ethernet(r.application.String() + ", channel insertion loss")
		out.LossSource.Confidence = r.lossSure
		out.LossSource = out.LossSource.noted(r.note)
	}
	return out
}
