space "2-209" {
  kind  = "work-area"
  title = "measuring laboratory"
  floor = "2"
}
