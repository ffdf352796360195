# Room 1A, racks and panels from top to bottom.

rack "1A-R1" {
  space = "1A"
  units = 45
  bond  = "1A-SBB"
}

rack "1A-R2" {
  space = "1A"
  units = 45
  bond  = "1A-SBB"
  note  = "screened panels and switches"
}

panel "1A-F" {
  space     = "1A"
  rack      = "1A-R1"
  unit      = 44
  ports     = 24
  fibre     = "OS2"
  connector = "LC"
  note      = "1 to 12 to the entrance, 13 to 24 to room 2A"
}

panel "1A-G" {
  space     = "1A"
  rack      = "1A-R1"
  unit      = 43
  ports     = 12
  fibre     = "OM4"
  connector = "LC"
}

panel "1A-A" {
  space    = "1A"
  rack     = "1A-R1"
  unit     = 40
  ports    = 48
  category = "6A"
  screen   = "unscreened"
  pinout   = "T568B"
  note     = "floor 1 east"
}

panel "1A-B" {
  space    = "1A"
  rack     = "1A-R1"
  unit     = 36
  ports    = 24
  category = "6A"
  screen   = "unscreened"
  pinout   = "T568B"
  note     = "floor 1 west and access points"
}

panel "1A-D" {
  space    = "1A"
  rack     = "1A-R1"
  unit     = 33
  ports    = 24
  category = "6A"
  screen   = "unscreened"
  pinout   = "T568B"
  former   = "1A-K"
  note     = "cameras in the yards"
}

panel "1A-C" {
  space    = "1A"
  rack     = "1A-R2"
  unit     = 40
  ports    = 24
  category = "6A"
  screen   = "screened"
  pinout   = "T568B"
  note     = "workshop; bonded through the rack"
}

panel "1A-X" {
  space  = "1A"
  rack   = "1A-R1"
  unit   = 10
  ports  = 8
  series = "6"
  note   = "television, floor 1"
}

panel "1A-Y" {
  space  = "1A"
  rack   = "1A-R1"
  unit   = 9
  ports  = 2
  series = "11"
  note   = "trunk from the head-end"
}

panel "1A-V" {
  space    = "1A"
  rack     = "1A-R1"
  unit     = 6
  ports    = 24
  category = "3"
  screen   = "unscreened"
  note     = "old wing, telephone"
}

panel "1A-Z" {
  space    = "1A"
  rack     = "1A-R1"
  unit     = 5
  ports    = 24
  category = "5"
  screen   = "unscreened"
  pinout   = "T568A"
  note     = "old wing, data of 1999"
}
