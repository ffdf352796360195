# The workshop. Welding and drives: screened cable only, and screened hardware
# at both ends.

space "1-WS" {
  kind        = "workshop"
  title       = "metal workshop"
  floor       = "1"
  air         = "general"
  temperature = "30 C"
  noise       = "E3"
}

interference "1-WS-WELD1" {
  kind  = "arc-welder"
  space = "1-WS"
}

interference "1-WS-DRV1" {
  kind  = "frequency-converter"
  space = "1-WS"
  note  = "drive of the long lathe"
}
