outlet "1.101" {
  space    = "1-101"
  ports    = 4
  category = "6A"
  screen   = "unscreened"
  pinout   = "T568B"
}

outlet "1.102" {
  space    = "1-102"
  ports    = 4
  category = "6A"
  screen   = "unscreened"
  pinout   = "T568B"
}

outlet "1.103" {
  space    = "1-103"
  ports    = 6
  category = "6A"
  screen   = "unscreened"
  pinout   = "T568B"
  note     = "two openings spare"
}

outlet "1.104" {
  space    = "1-104"
  ports    = 4
  category = "6A"
  screen   = "unscreened"
  pinout   = "T568B"
}

outlet "1.105" {
  space    = "1-105"
  ports    = 4
  category = "6A"
  screen   = "unscreened"
  pinout   = "T568B"
}

outlet "1.106" {
  space    = "1-106"
  ports    = 4
  category = "6A"
  screen   = "unscreened"
  pinout   = "T568B"
}

outlet "1.107" {
  space    = "1-107"
  ports    = 4
  category = "6A"
  screen   = "unscreened"
  pinout   = "T568B"
}

outlet "1.108" {
  space    = "1-108"
  ports    = 4
  category = "6A"
  screen   = "unscreened"
  pinout   = "T568B"
}
