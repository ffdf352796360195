pathway "1-C-01" {
  kind        = "conduit"
  through     = ["1B", "1-CV-W", "1A"]
  length      = "40 m"
  enclosure   = "metal-raceway"
  material    = "metal"
  diameter    = "41 mm"
  bends       = "180 deg"
  pull        = "22 m"
  bend_radius = "250 mm"
  crossing "1-W-06" {
    rating          = "2 h"
    firestop        = "1-FSL06"
    firestop_rating = "2 h"
    between         = ["1B", "1-CV-W"]
  }
  crossing "1-W-07" {
    rating          = "1 h"
    firestop        = "1-FSL07"
    firestop_rating = "1 h"
    between         = ["1-CV-W", "1A"]
  }
}
