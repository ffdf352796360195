# Trays and drops of floor 2, east side.

pathway "2-T-01" {
  kind     = "tray"
  through  = ["2A", "2-CV-E"]
  length   = "9 m"
  width    = "300 mm"
  depth    = "50 mm"
  material = "metal"
  power {
    circuits = 6
    gap      = "120 mm"
  }
  crossing "2-W-01" {
    rating          = "1 h"
    firestop        = "2-FSL02"
    firestop_rating = "1 h"
    between         = ["2A", "2-CV-E"]
  }
}

pathway "2-T-02" {
  kind     = "tray"
  through  = ["2-CV-E"]
  length   = "13 m"
  width    = "300 mm"
  depth    = "50 mm"
  material = "metal"
}

pathway "2-T-03" {
  kind     = "tray"
  through  = ["2-CV-E"]
  length   = "15 m"
  width    = "300 mm"
  depth    = "50 mm"
  material = "metal"
  power {
    circuits = 3
    gap      = "100 mm"
  }
}

pathway "2-T-04" {
  kind     = "tray"
  through  = ["2-CV-E"]
  length   = "14 m"
  width    = "200 mm"
  depth    = "50 mm"
  material = "metal"
}

pathway "2-D-01" {
  kind      = "raceway"
  through   = ["2-CV-E", "2-201", "2-202"]
  length    = "5 m"
  enclosure = "metal-raceway"
  material  = "metal"
  width     = "60 mm"
  depth     = "60 mm"
}

pathway "2-D-02" {
  kind      = "raceway"
  through   = ["2-CV-E", "2-203", "2-204"]
  length    = "5 m"
  enclosure = "metal-raceway"
  material  = "metal"
  width     = "60 mm"
  depth     = "60 mm"
}

pathway "2-D-03" {
  kind      = "raceway"
  through   = ["2-CV-E", "2-205", "2-206"]
  length    = "5 m"
  enclosure = "metal-raceway"
  material  = "metal"
  width     = "60 mm"
  depth     = "60 mm"
}

pathway "2-D-04" {
  kind      = "raceway"
  through   = ["2-CV-E", "2-207", "2-208"]
  length    = "5 m"
  enclosure = "metal-raceway"
  material  = "metal"
  width     = "60 mm"
  depth     = "60 mm"
}
