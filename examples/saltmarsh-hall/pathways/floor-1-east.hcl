# Trays of the east side, from room 1A outwards, and the drops. Each drop is a
# steel column in the wall between two rooms and serves both.

pathway "1-T-01" {
  kind     = "tray"
  through  = ["1A", "1-CV-E"]
  length   = "8 m"
  width    = "300 mm"
  depth    = "50 mm"
  material = "metal"
  power {
    circuits = 6
    gap      = "100 mm"
  }
  crossing "1-W-01" {
    rating          = "1 h"
    firestop        = "1-FSL02"
    firestop_rating = "1 h"
    between         = ["1A", "1-CV-E"]
  }
}

pathway "1-T-02" {
  kind     = "tray"
  through  = ["1-CV-E"]
  length   = "12 m"
  width    = "300 mm"
  depth    = "50 mm"
  material = "metal"
  power {
    circuits = 6
    gap      = "100 mm"
  }
}

pathway "1-T-03" {
  kind     = "tray"
  through  = ["1-CV-E"]
  length   = "14 m"
  width    = "300 mm"
  depth    = "50 mm"
  material = "metal"
  power {
    circuits = 6
    gap      = "60 mm"
    note     = "lighting circuits on the same trapeze"
  }
}

pathway "1-T-04" {
  kind     = "tray"
  through  = ["1-CV-E"]
  length   = "16 m"
  width    = "200 mm"
  depth    = "50 mm"
  material = "metal"
}

pathway "1-D-01" {
  kind      = "raceway"
  through   = ["1-CV-E", "1-101", "1-102"]
  length    = "5 m"
  enclosure = "metal-raceway"
  material  = "metal"
  width     = "60 mm"
  depth     = "60 mm"
}

pathway "1-D-02" {
  kind      = "raceway"
  through   = ["1-CV-E", "1-103", "1-104"]
  length    = "5 m"
  enclosure = "metal-raceway"
  material  = "metal"
  width     = "60 mm"
  depth     = "60 mm"
}

pathway "1-D-03" {
  kind      = "raceway"
  through   = ["1-CV-E", "1-105", "1-106"]
  length    = "5 m"
  enclosure = "metal-raceway"
  material  = "metal"
  width     = "60 mm"
  depth     = "60 mm"
}

pathway "1-D-04" {
  kind      = "raceway"
  through   = ["1-CV-E", "1-107", "1-108"]
  length    = "5 m"
  enclosure = "metal-raceway"
  material  = "metal"
  width     = "60 mm"
  depth     = "60 mm"
}
