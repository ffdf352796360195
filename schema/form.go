package schema

import "homerun/schema/standard"

// The forms of the texts that a standard defines.

func euroclassForm(text string) (next string, ok bool) {
	if _, err := standard.ParseEuroclass(text); err != nil {
		return "write a Euroclass of EN 13501-6, such as Cca-s1b,d2,a2 or Eca", false
	}
	return "", true
}

func listingForm(text string) (next string, ok bool) {
	if _, err := standard.ParseListing(text); err != nil {
		return "write the listing as printed on the jacket, such as CMP, CMR, CM, CL2P-LP(0.5A), OFNR or CATVP", false
	}
	return "", true
}
