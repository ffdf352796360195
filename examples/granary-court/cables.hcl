# Cable as its jacket and declaration of performance state it.

cable "k6-uutp-cca" {
  category    = "6"
  screen      = "U/UTP"
  euroclass   = "Cca-s1a,d1,a1"
  conductors  = "23 AWG solid"
  diameter    = "6.2 mm"
  bend_radius = "25 mm"
  rated       = "60 C"
  segregation = "b"
}

cable "k6-uutp-b2ca" {
  category    = "6"
  screen      = "U/UTP"
  euroclass   = "B2ca-s1a,d1,a1"
  conductors  = "23 AWG solid"
  diameter    = "6.4 mm"
  bend_radius = "26 mm"
  rated       = "60 C"
  segregation = "b"
}

cable "k7-sftp-cca" {
  category    = "7"
  screen      = "S/FTP"
  euroclass   = "Cca-s1a,d1,a1"
  conductors  = "23 AWG solid"
  diameter    = "7.5 mm"
  bend_radius = "30 mm"
  rated       = "60 C"
  segregation = "d"
}

cable "cord-k6" {
  category   = "6"
  screen     = "U/UTP"
  conductors = "26 AWG stranded"
  diameter   = "5.6 mm"
}

cable "cord-k7" {
  category   = "7"
  screen     = "S/FTP"
  conductors = "26 AWG stranded"
  diameter   = "6.2 mm"
}
