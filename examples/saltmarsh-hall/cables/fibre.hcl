# Optical fibre: backbone cable and duplex cords.

cable "f-os2-12-ofnp" {
  fibre       = "OS2"
  strands     = 12
  listing     = "OFNP"
  diameter    = "6.5 mm"
  bend_radius = "65 mm"
}

cable "f-os2-12-ofnr" {
  fibre       = "OS2"
  strands     = 12
  listing     = "OFNR"
  diameter    = "6.5 mm"
  bend_radius = "65 mm"
}

cable "f-om4-12-ofnr" {
  fibre       = "OM4"
  strands     = 12
  listing     = "OFNR"
  diameter    = "6.5 mm"
  bend_radius = "65 mm"
}

cable "cord-os2" {
  fibre       = "OS2"
  strands     = 2
  diameter    = "3 mm"
  bend_radius = "25 mm"
}

cable "cord-om4" {
  fibre       = "OM4"
  strands     = 2
  diameter    = "3 mm"
  bend_radius = "25 mm"
}
