# Fibre between the rooms. Each run is one cable of twelve fibres and takes
# twelve ports at both ends.

run "1A/1B-F1" {
  from   = "1A-F:1-12"
  to     = "1B-F:1-12"
  length = "46.5 m"
  cable  = "f-os2-12-ofnp"
  route  = ["1-C-01"]
  serves = "10GBASE-LR"
  slack  = "3 m"
}

run "1A/2A-F1" {
  from   = "1A-F:13-24"
  to     = "2A-F:1-12"
  length = "18 m"
  cable  = "f-os2-12-ofnr"
  route  = ["1-L-01"]
  serves = "10GBASE-LR"
  state  = "spare"
  slack  = "4 m"
}

run "1A/2A-F2" {
  from   = "1A-G:1-12"
  to     = "2A-G:1-12"
  length = "18 m"
  cable  = "f-om4-12-ofnr"
  route  = ["1-L-01"]
  serves = "10GBASE-SR"
  slack  = "4 m"
}
