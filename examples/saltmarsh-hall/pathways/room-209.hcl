pathway "2-T-05" {
  kind     = "tray"
  through  = ["2-CV-E"]
  length   = "8 m"
  width    = "150 mm"
  depth    = "50 mm"
  material = "metal"
}

pathway "2-D-05" {
  kind      = "raceway"
  through   = ["2-CV-E", "2-209"]
  length    = "5 m"
  enclosure = "metal-raceway"
  material  = "metal"
  width     = "60 mm"
  depth     = "60 mm"
}
