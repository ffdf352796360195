equipment "1-AP1" {
  kind        = "access-point"
  space       = "1-HALL"
  ports       = 1
  power_class = 6
  needs       = "40 W"
}

equipment "1-AP2" {
  kind        = "access-point"
  space       = "1-HALL"
  ports       = 1
  power_class = 6
  needs       = "40 W"
}

equipment "1-AP3" {
  kind        = "access-point"
  space       = "1-HALL"
  ports       = 1
  power_class = 6
  needs       = "40 W"
}

equipment "1-AP4" {
  kind        = "access-point"
  space       = "1-HALL"
  ports       = 1
  power_class = 6
  needs       = "40 W"
}

equipment "1-AP5" {
  kind        = "access-point"
  space       = "1-HALL"
  ports       = 1
  power_class = 6
  needs       = "40 W"
}

equipment "1-AP6" {
  kind        = "access-point"
  space       = "1-HALL"
  ports       = 1
  power_class = 6
  needs       = "40 W"
}

equipment "2-AP1" {
  kind        = "access-point"
  space       = "2-HALL"
  ports       = 1
  power_class = 6
  needs       = "40 W"
}

equipment "2-AP2" {
  kind        = "access-point"
  space       = "2-HALL"
  ports       = 1
  power_class = 6
  needs       = "40 W"
}

equipment "2-AP3" {
  kind        = "access-point"
  space       = "2-HALL"
  ports       = 1
  power_class = 6
  needs       = "40 W"
}

equipment "2-AP4" {
  kind        = "access-point"
  space       = "2-HALL"
  ports       = 1
  power_class = 6
  needs       = "40 W"
}

equipment "2-AP5" {
  kind        = "access-point"
  space       = "2-HALL"
  ports       = 1
  power_class = 6
  needs       = "40 W"
}

equipment "2-AP6" {
  kind        = "access-point"
  space       = "2-HALL"
  ports       = 1
  power_class = 6
  needs       = "40 W"
}
