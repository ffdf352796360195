# The cable entrance.

rack "1B-R1" {
  space = "1B"
  units = 24
  bond  = "1B-PBB"
}

panel "1B-F" {
  space     = "1B"
  rack      = "1B-R1"
  unit      = 20
  ports     = 24
  fibre     = "OS2"
  connector = "LC"
}

equipment "1B-RT1" {
  kind  = "router"
  space = "1B"
  ports = 8
  rack  = "1B-R1"
  unit  = 16
  note  = "of the access provider"
}
