# The void below the ground floor, and the one way that goes along the stairs.

pathway "0-T-01" {
  kind     = "basket"
  through  = ["0A", "0-FV"]
  length   = "12 m"
  width    = "200 mm"
  depth    = "60 mm"
  material = "metal"
  power {
    circuits = 6
    gap      = "50 mm"
    barrier  = "open-metal"
  }
}

pathway "0-T-02" {
  kind     = "basket"
  through  = ["0-FV"]
  length   = "15 m"
  width    = "150 mm"
  depth    = "60 mm"
  material = "metal"
}

pathway "0-D-01" {
  kind      = "duct"
  through   = ["0-FV", "0-01", "0-02"]
  length    = "4 m"
  enclosure = "non-metal-raceway"
  material  = "non-metal"
  width     = "80 mm"
  depth     = "40 mm"
}

pathway "0-D-02" {
  kind      = "duct"
  through   = ["0-FV", "0-03", "0-04"]
  length    = "5 m"
  enclosure = "non-metal-raceway"
  material  = "non-metal"
  width     = "80 mm"
  depth     = "40 mm"
}

pathway "0-D-03" {
  kind    = "surface"
  through = ["0A", "0-STAIR", "0-05"]
  length  = "18 m"
  note    = "along the skirting of the stairs: B2ca cable only"
}

pathway "0-C-01" {
  kind        = "conduit"
  through     = ["0-FV", "0-06"]
  length      = "7 m"
  enclosure   = "metal-raceway"
  material    = "metal"
  diameter    = "25 mm"
  bends       = "90 deg"
  pull        = "7 m"
  bend_radius = "150 mm"
}
