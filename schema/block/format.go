package block

import (
	"strings"

	"github.com/hashicorp/hcl/v2/hclwrite"
)

// Format lays the text of a file out canonically: two spaces of indent a level,
// equals signs and comments of neighbouring lines aligned. A byte order mark is
// dropped, line ends stay as they are. Text that can not be read wholly comes
// back unchanged, so that no mistake is moved about before somebody has looked
// at it.
func Format(src string) string {
	chunks, problems := Split(src)
	if len(problems) > 0 {
		return src
	}
	for _, c := range chunks {
		if _, problems := Parse(c.Text); len(problems) > 0 {
			return src
		}
	}
	return string(hclwrite.Format([]byte(strings.TrimPrefix(src, byteOrderMark))))
}
