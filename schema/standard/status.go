package standard

// Status is what a family of standards says of a category. The zero value is none.
type Status uint8

// The statuses.
const (
	Recognised Status = iota + 1
	VoiceOnly         // still specified, for voice; not for new data work
	Withdrawn         // no longer recognised; a run of it is a legacy
	OtherBody         // specified by the other family of standards only
)

// statuses are the words for the statuses.
var statuses = []string{
	Recognised: "recognised", VoiceOnly: "for voice only", Withdrawn: "withdrawn", OtherBody: "not specified by this family of standards",
}

// String returns the status in words.
func (s Status) String() string { return wordOf(statuses, int(s)) }

var (
	tiaCategories = Source{Body: "ANSI/TIA", Edition: "568-C.2", Clause: "recognised categories", Confidence: Confirmed}
	tiaEight      = Source{Body: "ANSI/TIA", Edition: "568.2-D", Clause: "recognised categories", Confidence: Confirmed}
	isoClasses    = Source{Body: "ISO/IEC", Edition: "11801-1:2017", Clause: "classes of balanced cabling", Confidence: Confirmed}
)

// StatusOf returns what the family of standards says of the category; ok is false for
// no category or no family.
func StatusOf(r Regime, c Category) (s Status, src Source, ok bool) {
	if !c.known() {
		return 0, Source{}, false
	}
	switch r {
	case TIA:
		s, src = tiaStatus(c)
	case ISO:
		s, src = isoStatus(c)
	default:
		return 0, Source{}, false
	}
	return s, src, true
}

// tiaStatus is the column of ANSI/TIA.
func tiaStatus(c Category) (Status, Source) {
	switch c {
	case Cat3:
		return VoiceOnly, tiaCategories
	case Cat4:
		return Withdrawn, tiaCategories
	case Cat5:
		return Withdrawn, tiaCategories.noted("its channel limits stand in an informative annex only")
	case Cat7, Cat7A:
		return OtherBody, isoClasses
	case Cat81, Cat82:
		return OtherBody, isoClasses.noted("the category of ANSI/TIA is 8")
	case Cat8:
		return Recognised, tiaEight
	case Cat5e, Cat6, Cat6A:
	}
	return Recognised, tiaCategories
}

// isoStatus is the column of ISO/IEC. Its category 5 has had the performance of category
// 5e since 2002, so both words are recognised.
func isoStatus(c Category) (Status, Source) {
	switch c {
	case Cat3:
		return VoiceOnly, isoClasses.unsure()
	case Cat4:
		return Withdrawn, isoClasses.unsure()
	case Cat5:
		return Recognised, isoClasses.noted("category 5 of the edition of 2002 and later; a cable from before it meets less")
	case Cat5e:
		return Recognised, isoClasses.noted("written as category 5 there")
	case Cat8:
		return OtherBody, tiaEight.noted("the categories of ISO/IEC are 8.1 and 8.2")
	case Cat6, Cat6A, Cat7, Cat7A, Cat81, Cat82:
	}
	return Recognised, isoClasses
}
