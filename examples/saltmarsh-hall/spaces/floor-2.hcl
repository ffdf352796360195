# Floor 2. It is warmer under the roof than on floor 1: links are shorter for
# it.

space "2-CV-E" {
  kind        = "ceiling-void"
  title       = "void above the east side"
  floor       = "2"
  air         = "plenum"
  temperature = "34 C"
  noise       = "E1"
  note        = "under the roof: measured in August"
}

space "2-CV-W" {
  kind        = "ceiling-void"
  title       = "void above the west side"
  floor       = "2"
  air         = "plenum"
  temperature = "34 C"
  noise       = "E1"
}

space "2-HALL" {
  kind  = "corridor"
  title = "corridor"
  floor = "2"
}

space "2-201" {
  kind  = "work-area"
  title = "classroom"
  floor = "2"
}

space "2-202" {
  kind  = "work-area"
  title = "classroom"
  floor = "2"
}

space "2-203" {
  kind  = "work-area"
  title = "electronics class"
  floor = "2"
}

space "2-204" {
  kind  = "work-area"
  title = "electronics class"
  floor = "2"
}

space "2-205" {
  kind  = "work-area"
  title = "drawing office"
  floor = "2"
}

space "2-206" {
  kind  = "work-area"
  title = "drawing office"
  floor = "2"
}

space "2-207" {
  kind  = "work-area"
  title = "staff"
  floor = "2"
}

space "2-208" {
  kind  = "work-area"
  title = "staff"
  floor = "2"
}

space "2-220" {
  kind  = "work-area"
  title = "seminar room"
  floor = "2"
}

space "2-221" {
  kind  = "work-area"
  title = "seminar room"
  floor = "2"
}
