# Coaxial cable, 75 ohm.

cable "x6-catvp" {
  series      = "6"
  listing     = "CATVP"
  diameter    = "6.9 mm"
  bend_radius = "69 mm"
}

cable "x11-catvr" {
  series      = "11"
  listing     = "CATVR"
  diameter    = "10.3 mm"
  bend_radius = "103 mm"
}

cable "cord-x6" {
  series      = "6"
  diameter    = "6.9 mm"
  bend_radius = "69 mm"
}
