# Trays of the west side.

pathway "1-T-05" {
  kind     = "tray"
  through  = ["1A", "1-CV-W"]
  length   = "11 m"
  width    = "300 mm"
  depth    = "50 mm"
  material = "metal"
  power {
    circuits = 3
    gap      = "150 mm"
  }
  crossing "1-W-02" {
    rating          = "1 h"
    firestop        = "1-FSL03"
    firestop_rating = "1 h"
    between         = ["1A", "1-CV-W"]
  }
}

pathway "1-T-06" {
  kind     = "tray"
  through  = ["1-CV-W"]
  length   = "15 m"
  width    = "300 mm"
  depth    = "50 mm"
  material = "metal"
}
