# Room 2A, one rack, panels from top to bottom.

rack "2A-R1" {
  space = "2A"
  units = 45
  bond  = "2A-SBB"
}

panel "2A-F" {
  space     = "2A"
  rack      = "2A-R1"
  unit      = 44
  ports     = 12
  fibre     = "OS2"
  connector = "LC"
}

panel "2A-G" {
  space     = "2A"
  rack      = "2A-R1"
  unit      = 43
  ports     = 12
  fibre     = "OM4"
  connector = "LC"
}

panel "2A-A" {
  space    = "2A"
  rack     = "2A-R1"
  unit     = 40
  ports    = 48
  category = "6A"
  screen   = "unscreened"
  pinout   = "T568B"
  note     = "floor 2 east"
}

panel "2A-B" {
  space    = "2A"
  rack     = "2A-R1"
  unit     = 36
  ports    = 24
  category = "6A"
  screen   = "unscreened"
  pinout   = "T568B"
  note     = "floor 2 west and access points"
}

panel "2A-X" {
  space  = "2A"
  rack   = "2A-R1"
  unit   = 10
  ports  = 8
  series = "6"
  note   = "television, floor 2; port 8 is the antenna"
}

panel "2A-Y" {
  space  = "2A"
  rack   = "2A-R1"
  unit   = 9
  ports  = 2
  series = "11"
  note   = "trunk to room 1A"
}
