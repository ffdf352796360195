# Into the workshop: one tray through the fire wall, then steel conduit down
# the columns.

pathway "1-T-09" {
  kind     = "tray"
  through  = ["1-CV-W", "1-WS"]
  length   = "22 m"
  width    = "150 mm"
  depth    = "60 mm"
  material = "metal"
  power {
    circuits = 9
    phases   = 3
    current  = "32 A"
    gap      = "200 mm"
    barrier  = "open-metal"
    power_in = "raceway"
  }
  crossing "1-W-04" {
    rating          = "1 h"
    firestop        = "1-FSL04"
    firestop_rating = "1 h"
    between         = ["1-CV-W", "1-WS"]
  }
  near "1-WS-WELD1" {
    gap = "2.5 m"
  }
  near "1-WS-DRV1" {
    gap = "1.8 m"
  }
}

pathway "1-C-41" {
  kind        = "conduit"
  through     = ["1-WS"]
  length      = "9 m"
  enclosure   = "metal-raceway"
  material    = "metal"
  diameter    = "41 mm"
  bends       = "180 deg"
  pull        = "9 m"
  bend_radius = "250 mm"
}

pathway "1-C-42" {
  kind        = "conduit"
  through     = ["1-WS"]
  length      = "14 m"
  enclosure   = "metal-raceway"
  material    = "metal"
  diameter    = "41 mm"
  bends       = "180 deg"
  pull        = "14 m"
  bend_radius = "250 mm"
}

pathway "1-C-43" {
  kind        = "conduit"
  through     = ["1-WS"]
  length      = "18 m"
  enclosure   = "metal-raceway"
  material    = "metal"
  diameter    = "41 mm"
  bends       = "180 deg"
  pull        = "18 m"
  bend_radius = "250 mm"
}
