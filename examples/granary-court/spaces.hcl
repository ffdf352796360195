# The stairs are the way of escape, so cable there has to meet a stricter
# class than in the rest of the building.

space "0A" {
  kind        = "telecommunications-room"
  title       = "floor distributor"
  floor       = "0"
  temperature = "24 C"
  noise       = "E1"
}

space "0-FV" {
  kind        = "floor-void"
  title       = "void below the ground floor"
  floor       = "0"
  temperature = "25 C"
  noise       = "E1"
}

space "0-STAIR" {
  kind        = "corridor"
  title       = "stairs, way of escape"
  floor       = "0"
  min_class   = "B2ca-s1a,d1,a1"
  temperature = "25 C"
  noise       = "E1"
}

space "0-01" {
  kind  = "work-area"
  title = "reading room"
  floor = "0"
}

space "0-02" {
  kind  = "work-area"
  title = "reading room"
  floor = "0"
}

space "0-03" {
  kind  = "work-area"
  title = "office"
  floor = "0"
}

space "0-04" {
  kind  = "work-area"
  title = "office"
  floor = "0"
}

space "0-05" {
  kind  = "work-area"
  title = "office behind the stairs"
  floor = "0"
}

space "0-06" {
  kind        = "plant-room"
  title       = "heat pump"
  floor       = "0"
  temperature = "30 C"
  noise       = "E2"
}
