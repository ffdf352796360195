# Weatherproof outlets below the cameras.

outlet "1.YN1" {
  space    = "1-YD-N"
  ports    = 1
  category = "6A"
  screen   = "unscreened"
  pinout   = "T568B"
}

outlet "1.YN2" {
  space    = "1-YD-N"
  ports    = 1
  category = "6A"
  screen   = "unscreened"
  pinout   = "T568B"
}

outlet "1.YN3" {
  space    = "1-YD-N"
  ports    = 1
  category = "6A"
  screen   = "unscreened"
  pinout   = "T568B"
}

outlet "1.YS1" {
  space    = "1-YD-S"
  ports    = 1
  category = "6A"
  screen   = "unscreened"
  pinout   = "T568B"
}

outlet "1.YS2" {
  space    = "1-YD-S"
  ports    = 1
  category = "6A"
  screen   = "unscreened"
  pinout   = "T568B"
}

outlet "1.YS3" {
  space    = "1-YD-S"
  ports    = 1
  category = "6A"
  screen   = "unscreened"
  pinout   = "T568B"
}
