# The floor distributor; the primary busbar of the building is in the same
# room.

busbar "0A-PBB" {
  kind  = "primary"
  space = "0A"
}

rack "0A-R1" {
  space = "0A"
  units = 24
  bond  = "0A-PBB"
}

panel "0A-A" {
  space    = "0A"
  rack     = "0A-R1"
  unit     = 20
  ports    = 24
  category = "6"
  screen   = "unscreened"
  pinout   = "T568A"
}

panel "0A-B" {
  space    = "0A"
  rack     = "0A-R1"
  unit     = 18
  ports    = 24
  category = "7"
  screen   = "screened"
  pinout   = "T568A"
}

equipment "0A-SW1" {
  kind     = "switch"
  space    = "0A"
  rack     = "0A-R1"
  unit     = 15
  ports    = 28
  supplies = "type-2"
}

equipment "0-06-CTL1" {
  kind  = "controller"
  space = "0-06"
  ports = 2
}
