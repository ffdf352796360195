# Floor 1. The ceiling voids carry the return air, so they are plenums.

space "1-CV-E" {
  kind        = "ceiling-void"
  title       = "void above the east side"
  floor       = "1"
  air         = "plenum"
  temperature = "30 C"
  noise       = "E1"
  note        = "return air of the ventilation passes here"
}

space "1-CV-W" {
  kind        = "ceiling-void"
  title       = "void above the west side"
  floor       = "1"
  air         = "plenum"
  temperature = "30 C"
  noise       = "E1"
}

space "1-HALL" {
  kind  = "corridor"
  title = "corridor"
  floor = "1"
}

space "1-101" {
  kind  = "work-area"
  title = "reception"
  floor = "1"
}

space "1-102" {
  kind  = "work-area"
  title = "print room"
  floor = "1"
}

space "1-103" {
  kind  = "work-area"
  title = "tutors"
  floor = "1"
}

space "1-104" {
  kind  = "work-area"
  title = "tutors"
  floor = "1"
}

space "1-105" {
  kind  = "work-area"
  title = "classroom"
  floor = "1"
}

space "1-106" {
  kind  = "work-area"
  title = "quiet room"
  floor = "1"
}

space "1-107" {
  kind  = "work-area"
  title = "library"
  floor = "1"
}

space "1-108" {
  kind  = "work-area"
  title = "reading room"
  floor = "1"
}

space "1-110" {
  kind  = "work-area"
  title = "open office"
  floor = "1"
}
