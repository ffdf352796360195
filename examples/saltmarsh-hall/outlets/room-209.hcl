outlet "2.209" {
  space    = "2-209"
  ports    = 4
  category = "6A"
  screen   = "unscreened"
  pinout   = "T568B"
}
