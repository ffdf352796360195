/* A file of things that are allowed and that nobody writes every day. */
space "2A" { kind = "telecommunications-room" }
space "2-HALL-Ü" {
  note  = "drawn at C:\\plans\\2, \"as built\"\t\u00b0"
  heat  = "50 % of 100%"
  empty = ""
  money = "$${amount} and %%{if}"
  rows  = [ ]
  two   = [ "a" , /* between */ "b", ]
  power {}
  deep { /* remark */
    level = - 1.50
    exp   = 1e3
    zeros = 007
  } // end
}
waiver "W-2026-004" {
  records = ["1A-A07"]
  reason  = "Void declassified in March; air handler moved to duct return"
  expires = "2027-03-31" /* nobody knows */
}
