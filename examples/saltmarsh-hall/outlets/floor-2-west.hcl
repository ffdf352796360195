outlet "2.220" {
  space    = "2-220"
  ports    = 4
  category = "6A"
  screen   = "unscreened"
  pinout   = "T568B"
}

outlet "2.221" {
  space    = "2-221"
  ports    = 4
  category = "6A"
  screen   = "unscreened"
  pinout   = "T568B"
}
