# Saltmarsh Hall. One plant, one folder: every file below belongs to it.

plant "saltmarsh-hall" {
  title     = "Saltmarsh Hall, training and workshop building"
  standard  = "TIA-568"
  fire_code = "NEC-2017"
  units     = "metric"
  labels    = "TIA-606"
  built     = 1994
  note      = "two floors and the old wing of 1968; local amendments: ask the building office"
}
