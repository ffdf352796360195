outlet "1.104" {
  space = "1-HALL"
  ports = 2 # two
}

cord "1A-C0112" {
  from = "1A-A:07"

  to   = "1A-SW1:12"
}
