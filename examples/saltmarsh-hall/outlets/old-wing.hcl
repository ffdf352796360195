outlet "1.121" {
  space    = "1-121"
  ports    = 3
  category = "3"
  screen   = "unscreened"
  pinout   = "T568A"
  note     = "port 3 blanked"
}

outlet "1.122" {
  space    = "1-122"
  ports    = 2
  category = "3"
  screen   = "unscreened"
  pinout   = "T568A"
  note     = "port 2 blanked"
}

outlet "1.123" {
  space    = "1-123"
  ports    = 1
  category = "3"
  screen   = "unscreened"
  pinout   = "T568A"
}

outlet "1.121D" {
  space    = "1-121"
  ports    = 2
  category = "5"
  screen   = "unscreened"
  pinout   = "T568A"
  note     = "port 2 blanked"
}

outlet "1.122D" {
  space    = "1-122"
  ports    = 2
  category = "5"
  screen   = "unscreened"
  pinout   = "T568A"
  note     = "port 2 blanked"
}

outlet "1.123D" {
  space    = "1-123"
  ports    = 1
  category = "5"
  screen   = "unscreened"
  pinout   = "T568A"
}
