outlet "1.WS1" {
  space    = "1-WS"
  ports    = 2
  category = "6A"
  screen   = "screened"
  pinout   = "T568B"
}

outlet "1.WS2" {
  space    = "1-WS"
  ports    = 2
  category = "6A"
  screen   = "screened"
  pinout   = "T568B"
}

outlet "1.WS3" {
  space    = "1-WS"
  ports    = 2
  category = "6A"
  screen   = "screened"
  pinout   = "T568B"
}

outlet "1.WS4" {
  space    = "1-WS"
  ports    = 2
  category = "6A"
  screen   = "screened"
  pinout   = "T568B"
}

outlet "1.WS5" {
  space    = "1-WS"
  ports    = 2
  category = "6A"
  screen   = "screened"
  pinout   = "T568B"
}

outlet "1.WS6" {
  space    = "1-WS"
  ports    = 2
  category = "6A"
  screen   = "screened"
  pinout   = "T568B"
}

outlet "1.WS7" {
  space    = "1-WS"
  ports    = 2
  category = "6A"
  screen   = "screened"
  pinout   = "T568B"
}
