package block_test

import (
	"testing"

	"github.com/google/go-cmp/cmp"

	"homerun/schema/block"
)

func TestFormat(t *testing.T) {
	t.Parallel()
	tests := []struct{ name, src, want string }{
		{"aligned", "space \"1A\" {\nkind=\"room\"\n    floor = \"1\" # low\n}\n", "space \"1A\" {\n  kind  = \"room\"\n  floor = \"1\" # low\n}\n"},
		{"CR LF stays", "space \"1A\"   {\r\nfloor=\"1\"\r\n}\r\n", "space \"1A\" {\r\n  floor = \"1\"\r\n}\r\n"},
		{"mark goes", "\ufeffspace \"1A\" {}\n", "space \"1A\" {}\n"},
		{"mistakes stay", "space \"1A\"   {\nfloor=1 m\n}\n", "space \"1A\"   {\nfloor=1 m\n}\n"},
		{"conflicts stay", "<<<<<<< a\nspace   \"1A\" {}\n=======\n>>>>>>> b\n", "<<<<<<< a\nspace   \"1A\" {}\n=======\n>>>>>>> b\n"},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			t.Parallel()
			got := block.Format(test.src)
			if diff := cmp.Diff(test.want, got); diff != "" {
				t.Errorf("(-want +got):\n%s", diff)
			}
			if again := block.Format(got); again != got {
				t.Errorf("formatted twice: %q, then %q", got, again)
			}
		})
	}
}
