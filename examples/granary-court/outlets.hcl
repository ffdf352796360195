outlet "0.01" {
  space    = "0-01"
  ports    = 6
  category = "6"
  screen   = "unscreened"
  pinout   = "T568A"
}

outlet "0.02" {
  space    = "0-02"
  ports    = 6
  category = "6"
  screen   = "unscreened"
  pinout   = "T568A"
}

outlet "0.03" {
  space    = "0-03"
  ports    = 4
  category = "6"
  screen   = "unscreened"
  pinout   = "T568A"
}

outlet "0.04" {
  space    = "0-04"
  ports    = 4
  category = "6"
  screen   = "unscreened"
  pinout   = "T568A"
}

outlet "0.05" {
  space    = "0-05"
  ports    = 3
  category = "6"
  screen   = "unscreened"
  pinout   = "T568A"
}

outlet "0.06" {
  space    = "0-06"
  ports    = 2
  category = "7"
  screen   = "screened"
  pinout   = "T568A"
}
