pathway "2-T-06" {
  kind     = "tray"
  through  = ["2A", "2-CV-W"]
  length   = "10 m"
  width    = "300 mm"
  depth    = "50 mm"
  material = "metal"
  crossing "2-W-02" {
    rating          = "1 h"
    firestop        = "2-FSL03"
    firestop_rating = "1 h"
    between         = ["2A", "2-CV-W"]
  }
}

pathway "2-T-07" {
  kind     = "tray"
  through  = ["2-CV-W"]
  length   = "16 m"
  width    = "200 mm"
  depth    = "50 mm"
  material = "metal"
}

pathway "2-D-06" {
  kind      = "raceway"
  through   = ["2-CV-W", "2-220", "2-221"]
  length    = "6 m"
  enclosure = "metal-raceway"
  material  = "metal"
  width     = "60 mm"
  depth     = "60 mm"
}
