# North pier passenger hall: the first floor.
plant "north-pier" {
  title     = "North pier passenger hall"
  standard  = "TIA-568"          # limits and length equations follow
  fire_code = "NEC-2017"
  units     = "metric"
}

space "1A" {
  kind        = "telecommunications-room"
  floor       = "1"
  temperature = "26 C"
}
space "1-CV-EAST" {
  kind        = "ceiling-void"
  floor       = "1"
  air         = "plenum"         // general | plenum | duct
  temperature = "38 C"
}

pathway "1-T-04" {
  kind    = "tray"
  through = ["1A", "1-CV-EAST"]
  length  = "34 m"

  // the power cables of the escalators
  power {
    circuits = 12
    gap      = "60 mm"
    barrier  = "none"
  }
  crossing "W-1-17" {
    rating   = "1 h"
    firestop = "1-FSL07"
  }
}

panel "1A-A" {
  space    = "1A"
  ports    = 48
  category = "6A"
}

bundle "1-B-09" {
  cable = "c6a-uutp-cmp"
  route = [
    "1-T-04", # along the tray
    "1-J-11",
  ]
  power = "type-3"

  run "1A-A07" {
    from   = "1A-A:07"
    to     = "1.104:1"
    length = "52.5 m"
    serves = "10GBASE-T"
  }
  run "1A-A08" {
    from   = "1A-A:08"
    to     = "1.104:2"
    length = "53 m"
    spare  = true
    floor  = -1
  }
}
