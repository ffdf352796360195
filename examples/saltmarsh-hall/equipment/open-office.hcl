equipment "1-110-PC1" {
  kind  = "workstation"
  space = "1-110"
  ports = 1
}

equipment "1-110-PC2" {
  kind  = "workstation"
  space = "1-110"
  ports = 1
}

equipment "1-110-PC3" {
  kind  = "workstation"
  space = "1-110"
  ports = 1
}

equipment "1-110-PC4" {
  kind  = "workstation"
  space = "1-110"
  ports = 1
}

equipment "1-110-PC5" {
  kind  = "workstation"
  space = "1-110"
  ports = 1
}

equipment "1-110-PC6" {
  kind  = "workstation"
  space = "1-110"
  ports = 1
}
