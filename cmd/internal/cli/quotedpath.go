package cli

import (
	"fmt"
	"strings"
	"unicode"
	"unicode/utf8"
)

// quotedPath is a path as git prints it where one stands on a line: as it is, or
// in quotes with the escapes of C where a character could not be printed or ends
// the quotes. Letters of all alphabets stay, as with core.quotePath=false.
func quotedPath(path string) string {
	if !strings.ContainsFunc(path, quoted) && utf8.ValidString(path) {
		return path
	}
	var b strings.Builder
	b.WriteByte('"')
	for i := 0; i < len(path); {
		r, n := utf8.DecodeRuneInString(path[i:])
		switch {
		case r == '"' || r == '\\':
			b.WriteString(`\` + string(r))
		case quoted(r) || r == utf8.RuneError && n == 1:
			for _, c := range []byte(path[i : i+n]) {
				fmt.Fprintf(&b, `\%03o`, c)
			}
		default:
			b.WriteString(path[i : i+n])
		}
		i += n
	}
	b.WriteByte('"')
	return b.String()
}

func quoted(r rune) bool {
	return r == '"' || r == '\\' || r != ' ' && !unicode.IsGraphic(r) || unicode.In(r, unicode.Cf, unicode.Zl, unicode.Zp)
}
