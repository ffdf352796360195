pathway "1-L-01" {
  kind     = "ladder"
  through  = ["1A", "1-RS", "2A"]
  length   = "11 m"
  width    = "300 mm"
  depth    = "60 mm"
  material = "metal"
  crossing "2-F-01" {
    rating          = "2 h"
    firestop        = "2-FSL01"
    firestop_rating = "2 h"
    between         = ["1-RS", "2A"]
  }
  crossing "1-W-05" {
    rating          = "2 h"
    firestop        = "1-FSL05"
    firestop_rating = "2 h"
    between         = ["1A", "1-RS"]
  }
}
