# Outside the building.

space "3-ROOF" {
  kind        = "outdoor"
  title       = "roof"
  floor       = "3"
  air         = "outdoor"
  temperature = "35 C"
}

space "1-YD-N" {
  kind        = "outdoor"
  title       = "north yard"
  floor       = "1"
  air         = "outdoor"
  temperature = "35 C"
}

space "1-YD-S" {
  kind        = "outdoor"
  title       = "south yard"
  floor       = "1"
  air         = "outdoor"
  temperature = "35 C"
}

space "1-YD-E" {
  kind        = "outdoor"
  title       = "east gate"
  floor       = "1"
  air         = "outdoor"
  temperature = "35 C"
}

space "1-YD-G" {
  kind        = "outdoor"
  title       = "far gate"
  floor       = "1"
  air         = "outdoor"
  temperature = "30 C"
  note        = "the duct lies in the ground"
}
