# Types found in the old wing. Not for new work.

cable "c3-cm" {
  category    = "3"
  screen      = "U/UTP"
  listing     = "CM"
  conductors  = "24 AWG solid"
  diameter    = "4.8 mm"
  bend_radius = "20 mm"
  note        = "pulled for the telephone exchange"
}

cable "c5-cm" {
  category    = "5"
  screen      = "U/UTP"
  listing     = "CM"
  conductors  = "24 AWG solid"
  diameter    = "5.2 mm"
  bend_radius = "21 mm"
}
