package standard_test

import (
	"errors"
	"strings"
	"testing"
	"unicode"

	"homerun/schema/standard"
	"homerun/schema/unit"
)

// parsers are all parsers, each giving back its text.
func parsers() map[string]func(string) (string, error) {
	return map[string]func(string) (string, error){
		"family":       back(standard.ParseRegime),
		"code":         back(standard.ParseFireCode),
		"category":     back(standard.ParseCategory),
		"application":  back(standard.ParseApplication),
		"listing":      back(standard.ParseListing),
		"euroclass":    back(standard.ParseEuroclass),
		"space":        back(standard.ParseSpace),
		"enclosure":    back(standard.ParseEnclosure),
		"segregation":  back(standard.ParseSegregation),
		"barrier":      back(standard.ParseBarrier),
		"route":        back(standard.ParsePowerRoute),
		"disturber":    back(standard.ParseDisturber),
		"noise":        back(standard.ParseNoise),
		"construction": back(standard.ParseConstruction),
		"fibre":        back(standard.ParseFibre),
		"light":        back(standard.ParseOpticalApplication),
		"series":       back(standard.ParseSeries),
		"power":        back(standard.ParsePowerType),
		"conduit":      back(standard.ParseConduit),
		"polarity":     back(standard.ParsePolarity),
	}
}

func back[T interface{ String() string }](parse func(string) (T, error)) func(string) (string, error) {
	return func(s string) (string, error) {
		v, err := parse(s)
		return v.String(), err
	}
}

// TestRefusals shows what a records keeper reads.
func TestRefusals(t *testing.T) {
	t.Parallel()
	for _, c := range []struct{ parser, text, want string }{
		{"family", "tia-568", `family of standards "tia-568" is not known: write "TIA-568"`},
		{"category", "6a", `category "6a" is not known: write "6A"`},
		{"category", "9", `category "9" is not known: use one of 3, 4, 5, 5e, 6, 6A, 7, 7A, 8, 8.1, 8.2`},
		{"listing", "cmp", `listing "cmp" is not in capital letters: write "CMP"`},
		{"listing", "CL2P-LP", `listing "CL2P-LP" does not end in the current of a conductor: write "CL2P-LP(0.5A)"`},
		{"listing", "CL2P-LP(0.5 A)", `listing "CL2P-LP(0.5 A)" is not in the form that is read: write "CL2P-LP(0.5A)"`},
		{"listing", "OFNP-LP(0.5A)", `listing OFNP is not made with a limited-power suffix: write "OFNP"`},
		{"euroclass", "Eca-s1", `Euroclass Eca has no additional classes: write "Eca"`},
		{"euroclass", "Cca-d2,s1b", `Euroclass "Cca-d2,s1b" has "s1b" where s, d and a classes follow in that order: write "Cca-s1b,d2,a2"`},
		{"euroclass", "cca", `Euroclass "cca" is not known: write "Cca"`},
		{"fibre", "om4", `class of fibre "om4" is not known: write "OM4"`},
		{"series", "RG-6", `series of coaxial cable "RG-6" is not known: use one of 6, 11, 59`},
		{"power", "4", `type of power over Ethernet "4" is not known: use one of type-1, type-2, type-3, type-4`},
		{"construction", "FTP", `construction "FTP" leaves the screens open: write F/UTP or U/FTP or F/FTP, as the jacket or data sheet states`},
	} {
		_, err := parsers()[c.parser](c.text)
		if err == nil || err.Error() != c.want {
			t.Errorf("%s %q:\n got %v\nwant %s", c.parser, c.text, err, c.want)
		}
	}
}

// TestEuroclassForms reads what EN 13501-6 lets a class state, and nothing else.
func TestEuroclassForms(t *testing.T) {
	t.Parallel()
	for _, good := range []string{"Aca", "B1ca-s1a,d0,a1", "B2ca-s1,d1,a1", "Cca-s1b,d2,a2", "Dca-s2,d2", "Dca-s3,d2,a3", "Cca", "Eca", "Fca"} {
		if e, err := standard.ParseEuroclass(good); err != nil || e.String() != good {
			t.Errorf("%s read as %s, %v", good, e, err)
		}
	}
	for _, bad := range []string{"", "Aca-s1", "Fca-d0", "Cca-", "Cca-s1b,", "Cca-s1b,s2", "Cca-s1b,a2,d2", "Cca-s4", "Cca s1b,d2,a2", "Cca-s1b, d2", "Bca", "Cca-s1b-d2"} {
		if e, err := standard.ParseEuroclass(bad); err == nil {
			t.Errorf("%q was read as %s", bad, e)
		}
	}
}

// TestLimitedPower: the number in the suffix is the current of one conductor, and the type
// stands for the rest (NFPA 70-2017, 725.144(B), as quoted in the literature).
func TestLimitedPower(t *testing.T) {
	t.Parallel()
	l := listing(t, "CL2P-LP(0.5A)")
	i, ok := l.Ampacity()
	if !ok || i != unit.Ampere/2 || l.Type() != "CL2P" || l.String() != "CL2P-LP(0.5A)" || !l.MayReplace(listing(t, "CL2R")) {
		t.Errorf("%s: %s, %t, type %s", l, i, ok, l.Type())
	}
	if _, ok := listing(t, "CL2P").Ampacity(); ok {
		t.Error("CL2P has no current of its own")
	}
}

// FuzzParse gives any text to every parser: what is read prints as the same text, what is
// refused is a *unit.Error in one line.
func FuzzParse(f *testing.F) {
	for _, seed := range []string{
		"TIA-568", "NEC-2017", "6A", "10GBASE-T", "CMP", "CL2P-LP(0.5A)", "CL2P-LP(0.0000001A)", "CM-LP()", "Cca-s1b,d2,a2",
		"plenum", "none", "b", "E2", "OS1a", "400GBASE-SR4.2", "11", "type-4", "PVC-40", "A", "SF/FTP", "STP", "\x00", strings.Repeat("Cca-", 50), "CMP-LP(9223372036854A)",
	} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, s string) {
		for name, parse := range parsers() {
			got, err := parse(s)
			var refused *unit.Error
			switch {
			case err == nil && got != s:
				t.Errorf("%s %q printed as %q", name, s, got)
			case err != nil && !errors.As(err, &refused):
				t.Errorf("%s %q: %T", name, s, err)
			case err != nil && (len(err.Error()) > 600 || strings.ContainsFunc(err.Error(), unicode.IsControl)):
				t.Errorf("%s %q: refusal %q", name, s, err)
			}
		}
		standard.ShieldOf(s)
	})
}
