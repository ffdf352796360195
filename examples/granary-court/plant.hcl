# Granary Court: a small building by ISO/IEC 11801 and the European fire
# classes.

plant "granary-court" {
  title     = "Granary Court, reading rooms and offices"
  standard  = "ISO-11801"
  fire_code = "EN-50575"
  min_class = "Cca-s1b,d2,a2"
  units     = "metric"
  labels    = "TIA-606"
  built     = 2015
}
