package standard

// OpticalApplication is a use of optical fibre that IEEE 802.3 defines. The zero value is
// none.
type OpticalApplication uint8

// The applications, by speed.
const (
	Base1000SX OpticalApplication = iota + 1
	Base1000LX
	Base10GSR
	Base10GLRM
	Base10GLR
	Base10GER
	Base25GSR
	Base25GLR
	Base40GSR4
	Base40GLR4
	Base100GSR10
	Base100GSR4
	Base100GLR4
	Base100GDR
	Base400GSR8
	Base400GSR42
	Base400GDR4
)

// opticalFacts are what an application asks of any fibre.
type opticalFacts struct {
	word             string
	multi, single    Wavelength // the window its light falls in; 0 where it is not made for such fibre
	strands          int
	strandsConfirmed Confidence
}

// opticalApplications are the applications. The windows are common knowledge of the trade: S is short,
// L long, E extra long. 400GBASE-SR4.2 has a second wavelength at 910 nm, where fibre loses
// less; the LR4 applications have four about 1310 nm.
var opticalApplications = []opticalFacts{
	Base1000SX:   {"1000BASE-SX", Nm850, 0, 2, Confirmed},
	Base1000LX:   {"1000BASE-LX", Nm1300, Nm1310, 2, Confirmed},
	Base10GSR:    {"10GBASE-SR", Nm850, 0, 2, Confirmed},
	Base10GLRM:   {"10GBASE-LRM", Nm1300, 0, 2, Confirmed},
	Base10GLR:    {"10GBASE-LR", 0, Nm1310, 2, Confirmed},
	Base10GER:    {"10GBASE-ER", 0, Nm1550, 2, Confirmed},
	Base25GSR:    {"25GBASE-SR", Nm850, 0, 2, Confirmed},
	Base25GLR:    {"25GBASE-LR", 0, Nm1310, 2, Confirmed},
	Base40GSR4:   {"40GBASE-SR4", Nm850, 0, 8, Confirmed},
	Base40GLR4:   {"40GBASE-LR4", 0, Nm1310, 2, Confirmed},
	Base100GSR10: {"100GBASE-SR10", Nm850, 0, 20, FromMemory},
	Base100GSR4:  {"100GBASE-SR4", Nm850, 0, 8, Confirmed},
	Base100GLR4:  {"100GBASE-LR4", 0, Nm1310, 2, Confirmed},
	Base100GDR:   {"100GBASE-DR", 0, Nm1310, 2, FromMemory},
	Base400GSR8:  {"400GBASE-SR8", Nm850, 0, 16, FromMemory},
	Base400GSR42: {"400GBASE-SR4.2", Nm850, 0, 8, FromMemory},
	Base400GDR4:  {"400GBASE-DR4", 0, Nm1310, 8, FromMemory},
}

// opticalWords returns the words for the applications.
func opticalWords() []string {
	words := make([]string, len(opticalApplications))
	for i, a := range opticalApplications {
		words[i] = a.word
	}
	return words
}

// ParseOpticalApplication reads "10GBASE-SR". The error is a *unit.Error: the text is no
// application over fibre, though it may be one over something else.
func ParseOpticalApplication(s string) (OpticalApplication, error) {
	i, err := indexOf(opticalWords(), "application over fibre", s)
	return OpticalApplication(i), err
}

// OpticalApplications returns all applications over fibre, by speed.
func OpticalApplications() []OpticalApplication {
	out := make([]OpticalApplication, 0, len(opticalApplications))
	for a := Base1000SX; a.known(); a++ {
		out = append(out, a)
	}
	return out
}

// known reports whether a is an application at all.
func (a OpticalApplication) known() bool { return a >= Base1000SX && a <= Base400GDR4 }

// String returns the word for the application, as in a record; empty for none.
func (a OpticalApplication) String() string {
	if !a.known() {
		return ""
	}
	return opticalApplications[a].word
}

// Wavelength returns the window of attenuation in which the light of the application falls
// in such fibre. ok is false where the application is not made for that kind of fibre.
func (a OpticalApplication) Wavelength(f Fibre) (w Wavelength, ok bool) {
	if !a.known() || !f.known() {
		return 0, false
	}
	w = opticalApplications[a].single
	if f.Multimode() {
		w = opticalApplications[a].multi
	}
	return w, w != 0
}

// Strands returns how many fibres the application uses, both directions together. ok is
// false for no application.
func (a OpticalApplication) Strands() (n int, src Source, ok bool) {
	if !a.known() {
		return 0, Source{}, false
	}
	f := opticalApplications[a]
	src = ethernet(f.word + ", fibres")
	src.Confidence = f.strandsConfirmed
	return f.strands, src, true
}
