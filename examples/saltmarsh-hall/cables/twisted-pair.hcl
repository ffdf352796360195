# Horizontal cable, as printed on the jackets and in the data sheets.

cable "c6a-uutp-cmp" {
  category    = "6A"
  screen      = "U/UTP"
  listing     = "CMP"
  conductors  = "23 AWG solid"
  diameter    = "7.4 mm"
  bend_radius = "30 mm"
  rated       = "75 C"
  segregation = "b"
}

cable "c6a-sftp-cmp" {
  category    = "6A"
  screen      = "S/FTP"
  listing     = "CMP"
  conductors  = "23 AWG solid"
  diameter    = "7.8 mm"
  bend_radius = "32 mm"
  rated       = "75 C"
  segregation = "d"
}

cable "c6-uutp-cmp" {
  category    = "6"
  screen      = "U/UTP"
  listing     = "CMP"
  conductors  = "23 AWG solid"
  diameter    = "6.0 mm"
  bend_radius = "24 mm"
  rated       = "60 C"
  segregation = "b"
}

cable "c6a-uutp-cmr" {
  category    = "6A"
  screen      = "U/UTP"
  listing     = "CMR"
  conductors  = "23 AWG solid"
  diameter    = "7.6 mm"
  bend_radius = "31 mm"
  rated       = "75 C"
  segregation = "b"
  note        = "wet-rated jacket"
}
