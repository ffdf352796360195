# Open office 110.

pathway "1-D-10" {
  kind      = "raceway"
  through   = ["1-CV-W", "1-110"]
  length    = "6 m"
  enclosure = "metal-raceway"
  material  = "metal"
  width     = "80 mm"
  depth     = "60 mm"
}

pathway "1-S-10" {
  kind      = "raceway"
  through   = ["1-110"]
  length    = "8 m"
  enclosure = "metal-raceway"
  material  = "metal"
  width     = "60 mm"
  depth     = "40 mm"
  note      = "skirting duct along the window wall"
}
