equipment "1-CAM1" {
  kind        = "camera"
  space       = "1-YD-N"
  ports       = 1
  power_class = 4
  needs       = "22 W"
}

equipment "1-CAM2" {
  kind        = "camera"
  space       = "1-YD-N"
  ports       = 1
  power_class = 4
  needs       = "22 W"
}

equipment "1-CAM3" {
  kind        = "camera"
  space       = "1-YD-N"
  ports       = 1
  power_class = 4
  needs       = "22 W"
}

equipment "1-CAM4" {
  kind        = "camera"
  space       = "1-YD-S"
  ports       = 1
  power_class = 4
  needs       = "22 W"
}

equipment "1-CAM5" {
  kind        = "camera"
  space       = "1-YD-S"
  ports       = 1
  power_class = 4
  needs       = "22 W"
}

equipment "1-CAM6" {
  kind        = "camera"
  space       = "1-YD-S"
  ports       = 1
  power_class = 4
  needs       = "22 W"
}

equipment "1-CAM7" {
  kind        = "camera"
  space       = "1-YD-E"
  ports       = 1
  power_class = 4
  needs       = "22 W"
}

equipment "1-CAM8" {
  kind        = "camera"
  space       = "1-YD-E"
  ports       = 1
  power_class = 4
  needs       = "22 W"
}

equipment "1-CAM9" {
  kind        = "camera"
  space       = "1-YD-G"
  ports       = 1
  power_class = 4
  needs       = "22 W"
}
