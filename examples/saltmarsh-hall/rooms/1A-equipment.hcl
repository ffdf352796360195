# What stands in the racks of room 1A beside the panels.

equipment "1A-SW1" {
  kind     = "switch"
  space    = "1A"
  rack     = "1A-R1"
  unit     = 38
  ports    = 52
  supplies = "type-3"
  note     = "ports 49 to 52 are for fibre"
}

equipment "1A-SW2" {
  kind  = "switch"
  space = "1A"
  rack  = "1A-R2"
  unit  = 38
  ports = 24
  note  = "workshop"
}

equipment "1A-SW3" {
  kind     = "switch"
  space    = "1A"
  rack     = "1A-R1"
  unit     = 32
  ports    = 24
  supplies = "type-2"
  note     = "cameras only"
}

equipment "1A-SPL1" {
  kind  = "splitter"
  space = "1A"
  ports = 5
  rack  = "1A-R1"
  unit  = 11
  loss  = "7 dB"
  note  = "port 1 in, ports 2 to 5 out"
}
