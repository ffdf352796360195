# Equipment that stays where it is. Laptops are not recorded.

equipment "1-101-PC1" {
  kind  = "workstation"
  space = "1-101"
  ports = 1
}

equipment "1-101-TEL1" {
  kind        = "telephone"
  space       = "1-101"
  ports       = 1
  power_class = 2
  needs       = "5 W"
}

equipment "1-102-PRN1" {
  kind  = "other"
  space = "1-102"
  ports = 1
  note  = "printer"
}

equipment "1-105-PC1" {
  kind  = "workstation"
  space = "1-105"
  ports = 1
}

equipment "1-107-PC1" {
  kind  = "workstation"
  space = "1-107"
  ports = 1
}
