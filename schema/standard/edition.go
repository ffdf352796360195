package standard

// memoryOfRule is what is said of a rule of NFPA 70-2017 in a later edition.
const memoryOfRule = "rule confirmed for NEC 2017, for this edition from memory"

// inEdition returns where a rule that was read for NFPA 70-2017 stands in an edition of it.
// The rule keeps its confidence and says for which edition it was read.
func inEdition(code FireCode, clause string) Source {
	src := Source{Body: "NFPA", Edition: "70-2017", Clause: clause, Confidence: Confirmed}
	switch code {
	case NEC2020:
		src.Edition, src.Note = "70-2020", memoryOfRule
	case NEC2023:
		src.Edition, src.Note = "70-2023", memoryOfRule
	case NEC2017, EN50575:
	}
	return src
}
