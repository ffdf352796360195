# The old wing of 1968. Nothing here was touched when the hall was built.

space "1-CV-O" {
  kind        = "ceiling-void"
  title       = "void above the old wing"
  floor       = "1"
  air         = "general"
  temperature = "30 C"
  noise       = "E1"
  built       = 1968
  note        = "lath and plaster: ask for the asbestos register before opening it"
}

space "1-121" {
  kind  = "work-area"
  title = "porter"
  floor = "1"
  built = 1968
}

space "1-122" {
  kind  = "work-area"
  title = "records store"
  floor = "1"
  built = 1968
}

space "1-123" {
  kind        = "plant-room"
  title       = "lift machine room"
  floor       = "1"
  temperature = "32 C"
  built       = 1968
}
