# What stands in the racks of room 2A beside the panels.

equipment "2A-SW1" {
  kind     = "switch"
  space    = "2A"
  rack     = "2A-R1"
  unit     = 38
  ports    = 52
  supplies = "type-3"
  note     = "ports 49 to 52 are for fibre"
}

equipment "2A-HE1" {
  kind          = "head-end"
  space         = "2A"
  ports         = 2
  rack          = "2A-R1"
  unit          = 14
  level         = "20 dBmV"
  top_frequency = "860 MHz"
  note          = "port 1 from the antenna, port 2 out"
}

equipment "2A-AMP1" {
  kind          = "amplifier"
  space         = "2A"
  ports         = 2
  rack          = "2A-R1"
  unit          = 13
  level         = "38 dBmV"
  top_frequency = "860 MHz"
  note          = "port 1 in, port 2 out"
}

equipment "2A-SPL1" {
  kind  = "splitter"
  space = "2A"
  ports = 9
  rack  = "2A-R1"
  unit  = 12
  loss  = "11 dB"
  note  = "port 1 in, ports 2 to 9 out"
}
