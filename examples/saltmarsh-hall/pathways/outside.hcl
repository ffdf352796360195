# Steel conduit to the yards, watertight from the wall outwards.

pathway "1-C-11" {
  kind        = "conduit"
  through     = ["1A", "1-CV-E", "1-YD-N"]
  length      = "42 m"
  enclosure   = "metal-raceway"
  material    = "metal"
  diameter    = "41 mm"
  bends       = "180 deg"
  pull        = "24 m"
  bend_radius = "250 mm"
  note        = "in one piece from the rack to the yard: the cable is not plenum-rated"
}

pathway "1-C-12" {
  kind        = "conduit"
  through     = ["1A", "1-CV-W", "1-YD-S"]
  length      = "55 m"
  enclosure   = "metal-raceway"
  material    = "metal"
  diameter    = "41 mm"
  bends       = "180 deg"
  pull        = "28 m"
  bend_radius = "250 mm"
}

pathway "1-C-13" {
  kind        = "conduit"
  through     = ["1A", "1-CV-E", "1-YD-E"]
  length      = "66 m"
  enclosure   = "metal-raceway"
  material    = "metal"
  diameter    = "41 mm"
  bends       = "180 deg"
  pull        = "28 m"
  bend_radius = "250 mm"
}

pathway "1-C-14" {
  kind        = "conduit"
  through     = ["1A", "1-CV-E", "1-YD-G"]
  length      = "82 m"
  enclosure   = "metal-raceway"
  material    = "metal"
  diameter    = "41 mm"
  bends       = "180 deg"
  pull        = "29 m"
  bend_radius = "250 mm"
}
