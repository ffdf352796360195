# Types of cord.

cable "cord-c6a-26" {
  category   = "6A"
  screen     = "U/UTP"
  conductors = "26 AWG stranded"
  diameter   = "5.8 mm"
  note       = "patch cord in the rooms"
}

cable "cord-c6a-24" {
  category   = "6A"
  screen     = "U/UTP"
  conductors = "24 AWG stranded"
  diameter   = "6.2 mm"
  note       = "work-area cord"
}

cable "cord-c6a-sftp" {
  category   = "6A"
  screen     = "S/FTP"
  conductors = "26 AWG stranded"
  diameter   = "6.4 mm"
  note       = "screened cord, workshop only"
}
