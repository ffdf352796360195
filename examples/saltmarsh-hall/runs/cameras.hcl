# Cameras in the yards. Cable with a wet-rated jacket, power over the pairs.

bundle "1-B-51" {
  cable = "c6a-uutp-cmr"
  route = ["1-C-11"]
  power = "type-2"

  run "1A-D01" {
    from   = "1A-D:01"
    to     = "1.YN1:1"
    length = "46 m"
    serves = "1000BASE-T"
    former = "1A-K01"
  }

  run "1A-D02" {
    from   = "1A-D:02"
    to     = "1.YN2:1"
    length = "47 m"
    serves = "1000BASE-T"
    former = "1A-K02"
  }

  run "1A-D03" {
    from   = "1A-D:03"
    to     = "1.YN3:1"
    length = "51 m"
    serves = "1000BASE-T"
    former = "1A-K03"
  }
}

bundle "1-B-52" {
  cable = "c6a-uutp-cmr"
  route = ["1-C-12"]
  power = "type-2"

  run "1A-D04" {
    from   = "1A-D:04"
    to     = "1.YS1:1"
    length = "58.5 m"
    serves = "1000BASE-T"
    former = "1A-K04"
  }

  run "1A-D05" {
    from   = "1A-D:05"
    to     = "1.YS2:1"
    length = "60 m"
    serves = "1000BASE-T"
    former = "1A-K05"
  }

  run "1A-D06" {
    from   = "1A-D:06"
    to     = "1.YS3:1"
    length = "61.5 m"
    serves = "1000BASE-T"
    former = "1A-K06"
  }
}

bundle "1-B-53" {
  cable = "c6a-uutp-cmr"
  route = ["1-C-13"]
  power = "type-2"

  run "1A-D07" {
    from   = "1A-D:07"
    to     = "1-CAM7:1"
    length = "70 m"
    serves = "1000BASE-T"
    former = "1A-K07"
    note   = "plugged straight into the camera"
  }

  run "1A-D08" {
    from   = "1A-D:08"
    to     = "1-CAM8:1"
    length = "71.5 m"
    serves = "1000BASE-T"
    former = "1A-K08"
  }
}

bundle "1-B-54" {
  cable = "c6a-uutp-cmr"
  route = ["1-C-14"]
  power = "type-2"

  run "1A-D09" {
    from   = "1A-D:09"
    to     = "1-CAM9:1"
    length = "86.5 m"
    serves = "1000BASE-T"
    former = "1A-K09"
  }
}
