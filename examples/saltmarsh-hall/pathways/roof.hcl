pathway "2-C-01" {
  kind        = "conduit"
  through     = ["2A", "2-CV-W", "3-ROOF"]
  length      = "18 m"
  enclosure   = "metal-raceway"
  material    = "metal"
  diameter    = "27 mm"
  bends       = "180 deg"
  pull        = "18 m"
  bend_radius = "170 mm"
  crossing "2-F-02" {
    rating          = "1 h"
    firestop        = "2-FSL04"
    firestop_rating = "1 h"
    between         = ["2-CV-W", "3-ROOF"]
  }
}
