# Duplex cords: each takes two ports of the panel and one of the switch.

cord "1B-PC001" {
  from   = "1B-F:1-2"
  to     = "1B-RT1:1"
  length = "3 m"
  cable  = "cord-os2"
  serves = "the way out of the building"
}

cord "1A-PC201" {
  from   = "1A-F:1-2"
  to     = "1A-SW1:49"
  length = "3 m"
  cable  = "cord-os2"
  serves = "the way out of the building"
}

cord "1A-PC202" {
  from   = "1A-G:1-2"
  to     = "1A-SW1:50"
  length = "3 m"
  cable  = "cord-om4"
  serves = "floor 2"
}

cord "2A-PC201" {
  from   = "2A-G:1-2"
  to     = "2A-SW1:49"
  length = "3 m"
  cable  = "cord-om4"
  serves = "floor 2"
}
