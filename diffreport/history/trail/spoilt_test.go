package trail_test

import (
	"bytes"
	"fmt"
	"testing"

	"homerun/diffreport/history"
)

// spoilings are texts of a plant's file from which its record can be read and then
// can not, or has another label, though the words from "plant" to the brace behind it
// stay the same.
func spoilings() map[string][2]string {
	const record = "plant \"generated\" {\n  standard = \"TIA-568\"\n}\n"
	return map[string][2]string{
		"a mark of byte order":  {"\ufeff" + record, "{\n\ufeff" + record},
		"a comment that is":     {"/* */\n" + record, "/*\n" + record + "/* */\n"},
		"a remark":              {record, "# " + record},
		"a word on its line":    {record, "the " + record},
		"a heredoc around it":   {record, "space \"1B\" {\n  note = <<EOT\n" + record + "EOT\n}\n"},
		"a record around it":    {record, "space \"1B\" {\n" + record + "}\n"},
		"another one before it": {record, "plant \"other\" {\n  standard = \"TIA-568\"\n}\n" + record},
		"a brace in a comment":  {"plant /* { */ \"generated\" {\n}\n", "plant /* { */ \"other\" {\n}\n"},
	}
}

// TestAPlantIsLostWhereItsRecordIsSpoilt lets a plant stand in another folder, where
// only its label finds it, and its record be spoilt and mended there.
func TestAPlantIsLostWhereItsRecordIsSpoilt(t *testing.T) {
	t.Parallel()
	const space = "space \"1A\" {\n  kind = \"corridor\"\n}\n"
	for name, texts := range spoilings() {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			var out bytes.Buffer
			for n, file := range [][2]string{{"old/", texts[0]}, {"old/", texts[1]}, {"old/", texts[0]}, {"", texts[0]}} {
				fmt.Fprintf(&out, "commit refs/heads/main\ncommitter Ada Moor <ada@example.org> %d +0000\ndata 4\nwork\ndeleteall\n", 978303600+n)
				for path, text := range map[string]string{"plant.hcl": file[1], "a.hcl": space} {
					fmt.Fprintf(&out, "M 100644 inline %s%s\ndata %d\n%s\n", file[0], path, len(text), text)
				}
			}
			p := &past{dir: t.TempDir(), number: make(map[string]int)}
			git(t, p.dir, nil, "init", "-q", "-b", "main")
			git(t, p.dir, out.Bytes(), "fast-import", "--quiet")
			p.open(t)
			if events := p.asWhole(t, []history.Asked{{Label: "1A"}}); events < 3 {
				t.Errorf("%d events: the plant was not lost and found again", events)
			}
		})
	}
}
