equipment "3-ANT1" {
  kind  = "antenna"
  space = "3-ROOF"
  ports = 1
  note  = "bonded to the lightning protection by its installer"
}

equipment "1-HALL-TV1" {
  kind  = "display"
  space = "1-HALL"
  ports = 1
  wants = "0 dBmV"
}

equipment "1-107-TV1" {
  kind  = "display"
  space = "1-107"
  ports = 1
  wants = "0 dBmV"
}

equipment "2-201-TV1" {
  kind  = "display"
  space = "2-201"
  ports = 1
  wants = "0 dBmV"
}

equipment "2-205-TV1" {
  kind  = "display"
  space = "2-205"
  ports = 1
  wants = "0 dBmV"
}

equipment "2-220-TV1" {
  kind  = "display"
  space = "2-220"
  ports = 1
  wants = "0 dBmV"
}

equipment "2-221-TV1" {
  kind  = "display"
  space = "2-221"
  ports = 1
  wants = "0 dBmV"
}
