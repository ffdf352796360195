outlet "2.201" {
  space    = "2-201"
  ports    = 4
  category = "6A"
  screen   = "unscreened"
  pinout   = "T568B"
}

outlet "2.202" {
  space    = "2-202"
  ports    = 4
  category = "6A"
  screen   = "unscreened"
  pinout   = "T568B"
}

outlet "2.203" {
  space    = "2-203"
  ports    = 4
  category = "6A"
  screen   = "unscreened"
  pinout   = "T568B"
}

outlet "2.204" {
  space    = "2-204"
  ports    = 4
  category = "6A"
  screen   = "unscreened"
  pinout   = "T568B"
}

outlet "2.205" {
  space    = "2-205"
  ports    = 4
  category = "6A"
  screen   = "unscreened"
  pinout   = "T568B"
}

outlet "2.206" {
  space    = "2-206"
  ports    = 4
  category = "6A"
  screen   = "unscreened"
  pinout   = "T568B"
}

outlet "2.207" {
  space    = "2-207"
  ports    = 4
  category = "6A"
  screen   = "unscreened"
  pinout   = "T568B"
}

outlet "2.208" {
  space    = "2-208"
  ports    = 4
  category = "6A"
  screen   = "unscreened"
  pinout   = "T568B"
}
