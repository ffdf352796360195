package block

import (
	"strings"
	"unicode"
)

// closers answers where something ends that the lexer has met: a comment, a
// merge conflict, a heredoc. A naive search from every beginning costs the
// square of the text when nothing ends, so each remembers where the last end of
// its sort is, and a search is made only when it will succeed.
type closers struct {
	// lastRemark and lastConflict are one more than the offset of the last end
	// in the text, or zero before anybody asked.
	lastRemark, lastConflict int
	// heredocs holds, for every line of the text that is a single name, the
	// offset at which the last such line starts.
	heredocs map[string]int
}

// remark is the offset after the next */, or -1.
func (c *closers) remark(src string, from int) int {
	if c.lastRemark == 0 {
		c.lastRemark = strings.LastIndex(src, "*/") + 2
	}
	if c.lastRemark-2 < from {
		return -1
	}
	return from + strings.Index(src[from:], "*/") + 2
}

// marker is how many equal characters make a merge marker.
const marker = 7

// isMarker reports whether the text, which starts a line, starts with one of the
// four lines that git leaves around an unresolved conflict.
func isMarker(line string) bool {
	if len(line) < marker {
		return false
	}
	c := line[0]
	for i := 1; i < marker; i++ {
		if line[i] != c {
			return false
		}
	}
	if c != '<' && c != '|' && c != '=' && c != '>' {
		return false
	}
	return len(line) == marker || line[marker] == ' ' || line[marker] == '\n' || line[marker] == '\r'
}

// conflict is the offset at the end of the line that ends the conflict whose
// marker stands at the given offset; without such a line, the end of the
// marker's own line.
func (c *closers) conflict(src string, from int) int {
	const closer = "\n>>>>>>>"
	if c.lastConflict == 0 {
		c.lastConflict = strings.LastIndex(src, closer) + 2
	}
	if src[from] != '<' || c.lastConflict-2 < from {
		return lineStop(src, from)
	}
	return lineStop(src, from+strings.Index(src[from:], closer)+1)
}

// heredocName is the name in <<NAME or <<-NAME at the end of a line, with which
// a heredoc starts; empty when the text starts with no such thing.
func heredocName(rest string) string {
	name, ok := strings.CutPrefix(rest, "<<")
	if !ok {
		return ""
	}
	name = strings.TrimPrefix(name, "-")
	end := 0
	for end < len(name) && (classes[name[end]] == wordByte || (name[end] == '-' && end > 0)) {
		end++
	}
	if end == 0 || (name[0] >= '0' && name[0] <= '9') {
		return ""
	}
	if tail := name[end:]; !strings.HasPrefix(tail, "\n") && !strings.HasPrefix(tail, "\r\n") {
		return ""
	}
	return name[:end]
}

// heredoc is the offset at the end of the next line, from the given start of a
// line on, that is the name alone; or -1.
func (c *closers) heredoc(src string, from int, name string) int {
	if c.heredocs == nil {
		c.heredocs = singleNames(src)
	}
	if last, ok := c.heredocs[name]; !ok || last < from {
		return -1
	}
	for from < len(src) {
		stop := lineStop(src, from)
		if trimmed(src[from:stop]) == name {
			return stop
		}
		from = lineEnd(src, from)
	}
	return -1
}

// singleNames finds the lines that could end a heredoc and where the last of
// each stands.
func singleNames(src string) map[string]int {
	names := make(map[string]int)
	for from := 0; from < len(src); from = lineEnd(src, from) {
		line := trimmed(src[from:lineStop(src, from)])
		if line != "" && classes[line[0]] == wordByte && !strings.ContainsAny(line, " \t=\"") {
			names[line] = from
		}
	}
	return names
}

func trimmed(line string) string { return strings.TrimFunc(line, unicode.IsSpace) }
