package rules_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"homerun/lint"
	"homerun/lint/rules"
	"homerun/schema"
	"homerun/schema/plant"
	"homerun/schema/unit"
)

// verdictsOn runs one rule over the text of a plant and returns its findings.
func verdictsOn(t *testing.T, rule *lint.Rule, text string) []lint.Finding {
	t.Helper()
	today, err := unit.ParseDate("2026-01-01")
	if err != nil {
		t.Fatal(err)
	}
	p := plant.Build(".", []*schema.File{schema.NewReader().ReadFile("plant.hcl", text)})
	for _, problem := range p.Problems {
		t.Fatalf("the plant of the test is wrong: %s", problem.Message)
	}
	report, err := lint.Run(p, []*lint.Rule{rule}, lint.Options{Today: today})
	if err != nil {
		t.Fatal(err)
	}
	return report.Findings
}

// oneCable is a plant with one run of one cable in one pathway through one
// space; the run ends in equipment that stands nowhere in particular.
func oneCable(fire, cable, air, enclosure string) string {
	return fmt.Sprintf(`
plant "p" {
  standard  = "TIA-568"
  fire_code = %q
}
space "S" {
  kind = "corridor"
  air  = %q
}
cable "k" {
  diameter = "5 mm"
  %s
}
pathway "w" {
  kind      = "raceway"
  through   = ["S"]
  length    = "1 m"
  enclosure = %q
}
run "r" {
  length = "2 m"
  cable  = "k"
  route  = ["w"]
}
`, fire, air, cable, enclosure)
}

// communications are the types in the columns of the table below.
var communications = []string{"CMP", "CMR", "CMG", "CM", "CMX", "CMUC"}

// TestListingMatrix asserts NFPA 70-2017, Table 800.154(a) with 800.113: the
// rows as published, a letter for each of CMP, CMR, CMG, CM, CMX, CMUC.
func TestListingMatrix(t *testing.T) {
	t.Parallel()
	for _, row := range []struct{ air, enclosure, verdicts string }{
		{"duct", "none", "YNNNNN"},
		{"duct", "metal-raceway", "YYYYYN"},
		{"plenum", "none", "YNNNNN"},
		{"plenum", "metal-raceway", "YYYYYN"},
		{"plenum", "plenum-raceway", "YNNNNN"},
		{"plenum", "cable-tray", "YNNNNN"},
		{"plenum", "solid-covered-tray", "YYYYYN"},
		{"riser", "none", "YYNNNN"},
		{"riser", "metal-raceway", "YYYYYN"},
		{"riser", "plenum-raceway", "YYNNNN"},
		{"riser", "riser-raceway", "YYNNNN"},
		{"riser-fireproof", "none", "YYYYYN"},
		{"general", "none", "YYYYYN"},
		{"general", "metal-raceway", "YYYYYN"},
		{"general", "non-metal-raceway", "YYYYYN"},
		{"general", "plenum-raceway", "YYYYNN"},
		{"general", "riser-raceway", "YYYYNN"},
		{"general", "general-raceway", "YYYYNN"},
		{"general", "cable-tray", "YYYYNN"},
		{"general", "cross-connect", "YYYYNN"},
		{"dwelling", "none", "YYYYYY"},
		{"multifamily", "none", "YYYYYY"},
		{"under-carpet", "none", "NNNNNY"},
	} {
		for i, listing := range communications {
			expectListing(t, listing, row.air, row.enclosure, row.verdicts[i])
		}
	}
}

// TestListingFamilies asserts NFPA 70-2017, 770.113, Table 820.154(a) and
// Table 725.154: bare in a plenum, bare in a riser, bare and in a tray in any
// other space.
func TestListingFamilies(t *testing.T) {
	t.Parallel()
	for _, row := range []struct{ listings, verdicts string }{
		{"OFNP OFCP", "YYYY"},
		{"OFNR OFCR", "NYYY"},
		{"OFNG OFN OFCG OFC", "NNYY"},
		{"CATVP CL2P CL3P", "YYYY"},
		{"CATVR CL2R CL3R", "NYYY"},
		{"CATV CL2 CL3", "NNYY"},
		{"CATVX CL2X CL3X", "NNYN"},
		{"PLTC", "NNYY"},
	} {
		for listing := range strings.FieldsSeq(row.listings) {
			expectListing(t, listing, "plenum", "none", row.verdicts[0])
			expectListing(t, listing, "riser", "none", row.verdicts[1])
			expectListing(t, listing, "general", "none", row.verdicts[2])
			expectListing(t, listing, "general", "cable-tray", row.verdicts[3])
		}
	}
}

// expectListing holds a verdict of the table, Y or N, against the rule's.
func expectListing(t *testing.T, listing, air, enclosure string, verdict byte) {
	t.Helper()
	permitted := verdict == 'Y'
	found := verdictsOn(t, rules.RatingListing, oneCable("NEC-2017", fmt.Sprintf("listing = %q", listing), air, enclosure))
	if permitted != (len(found) == 0) {
		t.Errorf("%s in %s, %s: permitted is %v, findings %+v", listing, air, enclosure, permitted, found)
	}
	for i := range found {
		if found[i].Limit == "" || found[i].Source == "" || len(found[i].Working) < 4 {
			t.Errorf("%s in %s: the finding does not show its working: %+v", listing, air, found[i])
		}
	}
}

// TestLimitedPowerSuffix asserts NFPA 70-2017, 725.144(B): a type with the
// suffix may lie wherever the type without it may.
func TestLimitedPowerSuffix(t *testing.T) {
	t.Parallel()
	expectListing(t, "CL2P-LP(0.5A)", "plenum", "none", 'Y')
	expectListing(t, "CL2R-LP(0.5A)", "plenum", "none", 'N')
	expectListing(t, "CL2R-LP(0.5A)", "riser", "none", 'Y')
}

// TestSubstitutesOffered asserts NFPA 70-2017, Tables 800.154(d), 820.154(b)
// and 725.154(A): what may be pulled instead is what the table substitutes and
// the space permits.
func TestSubstitutesOffered(t *testing.T) {
	t.Parallel()
	for _, row := range []struct{ listing, air, enclosure, offered string }{
		{"CMR", "plenum", "none", "CMP"},
		{"CM", "riser", "none", "CMP or CMR"},
		{"CMX", "general", "cable-tray", "CMP, CMR, CMG or CM"},
		{"CATV", "riser", "none", "CATVP, CMP, CATVR or CMR"},
		{"CL3R", "plenum", "none", "CMP or CL3P"},
		{"CL2", "riser", "none", "CMP, CL3P, CL2P, CMR, CL3R or CL2R"},
		{"OFNR", "plenum", "none", "OFNP"},
	} {
		found := verdictsOn(t, rules.RatingListing, oneCable("NEC-2017", fmt.Sprintf("listing = %q", row.listing), row.air, row.enclosure))
		if len(found) != 1 || found[0].Limit != row.offered {
			t.Errorf("%s in %s: offered %q, findings %+v", row.listing, row.air, row.offered, found)
		}
	}
}

// TestEuroclassMinimum asserts EN 13501-6 with the minima of national practice:
// Cca-s1b,d2,a2 of BS 6701:2016+A1:2017, Dca-s2,d2 for larger buildings, as
// quoted in the literature. Short lists the parts that fall short.
func TestEuroclassMinimum(t *testing.T) {
	t.Parallel()
	for _, row := range []struct{ has, least, short string }{
		{"Cca-s1b,d2,a2", "Cca-s1b,d2,a2", ""},
		{"Cca-s1a,d1,a1", "Cca-s1b,d2,a2", ""},
		{"B2ca-s1a,d0,a1", "Cca-s1b,d2,a2", ""},
		{"Aca", "Cca-s1b,d2,a2", ""},
		{"Cca-s1,d2,a2", "Cca-s1b,d2,a2", "smoke"},
		{"Cca-s2,d2,a2", "Cca-s1b,d2,a2", "smoke"},
		{"Cca-s1b,d2,a3", "Cca-s1b,d2,a2", "acidity"},
		{"Cca-s1b", "Cca-s1b,d2,a2", "flaming droplets, acidity"},
		{"Dca-s1b,d2,a2", "Cca-s1b,d2,a2", "reaction to fire"},
		{"Eca", "Cca-s1b,d2,a2", "reaction to fire, smoke, flaming droplets, acidity"},
		{"Dca-s2,d2", "Dca-s2,d2", ""},
		{"Dca-s2,d2,a3", "Dca-s2,d2", ""},
		{"Dca-s3,d2,a1", "Dca-s2,d2", "smoke"},
		{"Eca", "Eca", ""},
		{"Fca", "Eca", "reaction to fire"},
	} {
		text := strings.Replace(oneCable("EN-50575", fmt.Sprintf("euroclass = %q", row.has), "general", "none"),
			"fire_code =", fmt.Sprintf("min_class = %q\n  fire_code =", row.least), 1)
		found := verdictsOn(t, rules.RatingEuroclass, text)
		switch {
		case row.short == "" && len(found) != 0:
			t.Errorf("%s against %s: %s", row.has, row.least, found[0].Message)
		case row.short != "" && (len(found) != 1 || !strings.Contains(found[0].Message, "falls short in "+row.short+", ")):
			t.Errorf("%s against %s: want %q short, findings %+v", row.has, row.least, row.short, found)
		}
	}
}

// TestStricterListingNeverRefused asserts the order that every family of
// NFPA 70-2017 has: where a type may lie, so may each type that is listed for
// more. Limited-use types have bounds of their own and are left out.
func TestStricterListingNeverRefused(t *testing.T) {
	t.Parallel()
	orders := []string{"CMP CMR CM", "CATVP CATVR CATV", "CL2P CL2R CL2", "CL3P CL3R CL3", "OFNP OFNR OFN", "OFCP OFCR OFC"}
	for _, air := range schema.SpaceAirs() {
		for _, enclosure := range schema.Enclosures() {
			for _, order := range orders {
				permitted := false
				for _, listing := range slices.Backward(strings.Fields(order)) {
					now := len(verdictsOn(t, rules.RatingListing, oneCable("NEC-2017", fmt.Sprintf("listing = %q", listing), air, enclosure))) == 0
					if permitted && !now {
						t.Errorf("%s is refused in %s, %s, where a laxer one may lie", listing, air, enclosure)
					}
					permitted = now
				}
			}
		}
	}
}
