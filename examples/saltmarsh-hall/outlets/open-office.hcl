# The desks move every year, the cable up to 1-CP1 does not.

consolidation-point "1-CP1" {
  space    = "1-110"
  ports    = 12
  category = "6"
  screen   = "unscreened"
}

outlet "1.110" {
  space    = "1-110"
  kind     = "multi-user"
  ports    = 12
  category = "6"
  screen   = "unscreened"
  pinout   = "T568B"
  note     = "serves two islands of desks"
}
