# Ceiling outlets for access points.

outlet "1.AP1" {
  space    = "1-HALL"
  ports    = 1
  category = "6A"
  screen   = "unscreened"
  pinout   = "T568B"
}

outlet "1.AP2" {
  space    = "1-HALL"
  ports    = 1
  category = "6A"
  screen   = "unscreened"
  pinout   = "T568B"
}

outlet "1.AP3" {
  space    = "1-HALL"
  ports    = 1
  category = "6A"
  screen   = "unscreened"
  pinout   = "T568B"
}

outlet "1.AP4" {
  space    = "1-HALL"
  ports    = 1
  category = "6A"
  screen   = "unscreened"
  pinout   = "T568B"
}

outlet "1.AP5" {
  space    = "1-HALL"
  ports    = 1
  category = "6A"
  screen   = "unscreened"
  pinout   = "T568B"
}

outlet "1.AP6" {
  space    = "1-HALL"
  ports    = 1
  category = "6A"
  screen   = "unscreened"
  pinout   = "T568B"
}

outlet "2.AP1" {
  space    = "2-HALL"
  ports    = 1
  category = "6A"
  screen   = "unscreened"
  pinout   = "T568B"
}

outlet "2.AP2" {
  space    = "2-HALL"
  ports    = 1
  category = "6A"
  screen   = "unscreened"
  pinout   = "T568B"
}

outlet "2.AP3" {
  space    = "2-HALL"
  ports    = 1
  category = "6A"
  screen   = "unscreened"
  pinout   = "T568B"
}

outlet "2.AP4" {
  space    = "2-HALL"
  ports    = 1
  category = "6A"
  screen   = "unscreened"
  pinout   = "T568B"
}

outlet "2.AP5" {
  space    = "2-HALL"
  ports    = 1
  category = "6A"
  screen   = "unscreened"
  pinout   = "T568B"
}

outlet "2.AP6" {
  space    = "2-HALL"
  ports    = 1
  category = "6A"
  screen   = "unscreened"
  pinout   = "T568B"
}
