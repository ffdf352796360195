# Rooms that hold racks, and the riser between them.

space "1A" {
  kind        = "telecommunications-room"
  title       = "telecommunications room, floor 1"
  floor       = "1"
  temperature = "24 C"
  noise       = "E1"
}

space "1B" {
  kind        = "entrance-facility"
  title       = "cable entrance"
  floor       = "1"
  temperature = "26 C"
  noise       = "E1"
}

space "2A" {
  kind        = "telecommunications-room"
  title       = "telecommunications room, floor 2"
  floor       = "2"
  temperature = "24 C"
  noise       = "E1"
}

space "1-RS" {
  kind        = "riser-shaft"
  title       = "riser from 1A to 2A"
  floor       = "1"
  air         = "riser"
  temperature = "28 C"
  noise       = "E1"
}
