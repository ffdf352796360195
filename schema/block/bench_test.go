package block_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/hashicorp/hcl/v2"
	"github.com/hashicorp/hcl/v2/hclsyntax"

	"homerun/schema/block"
)

// big writes a plant of 20,000 runs in bundles of 24, with the panels, outlets
// and cords that belong to them: about 3.5 MB. The extra text goes into every
// run.
func big(extra string) string {
	var b strings.Builder
	for run := range 20000 {
		if run%24 == 0 {
			fmt.Fprintf(&b, "panel \"%dA-P%03d\" {\n  space    = \"%dA\"\n  ports    = 48\n  category = \"6A\"\n}\n\n", run/2400+1, run/24, run/2400+1)
			for outlet := run; outlet < run+24; outlet += 4 {
				fmt.Fprintf(&b, "outlet \"1.%05d\" {\n  space    = \"1-HALL\"\n  ports    = 4\n  category = \"6A\" # as built\n}\n", outlet)
			}
			fmt.Fprintf(&b, "bundle \"1-B-%03d\" {\n  cable = \"c6a-uutp-cmp\"\n  route = [\"1-T-04\", \"1-J-11\"]\n  power = \"type-3\"\n\n", run/24)
		}
		fmt.Fprintf(&b, "  run \"1A-A%05d\" {\n    from   = \"1A-P%03d:%02d\"\n    to     = \"1.%05d:1\"\n    length = \"%d.5 m\"\n    serves = \"10GBASE-T\"\n%s  }\n", run, run/24, run%24+1, run, 20+run%60, extra)
		if run%24 == 23 || run == 19999 {
			b.WriteString("}\n\n")
		}
	}
	return b.String()
}

// oddLines keep the scanner from reading a run: an escape, and comments where
// it expects none.
const oddLines = "    note   = \"C:\\\\plans\\\\1 \\\"as built\\\"\" /* east */\n    spare  = /* no */ false\n"

func BenchmarkSplit(b *testing.B) {
	src := big("")
	b.SetBytes(int64(len(src)))
	b.ReportAllocs()
	for b.Loop() {
		block.Split(src)
	}
}

func BenchmarkParse(b *testing.B) { benchmarkParse(b, big("")) }

func BenchmarkParseOdd(b *testing.B) { benchmarkParse(b, big(oddLines)) }

func benchmarkParse(b *testing.B, src string) {
	b.Helper()
	b.SetBytes(int64(len(src)))
	b.ReportAllocs()
	for b.Loop() {
		chunks, problems := block.Split(src)
		if len(problems) > 0 {
			b.Fatal(problems)
		}
		for _, c := range chunks {
			if _, problems := block.Parse(c.Text); len(problems) > 0 {
				b.Fatal(problems)
			}
		}
	}
}

func BenchmarkParserOnly(b *testing.B) { benchmarkParserOnly(b, big("")) }

func BenchmarkParserOnlyOdd(b *testing.B) { benchmarkParserOnly(b, big(oddLines)) }

func benchmarkParserOnly(b *testing.B, src string) {
	b.Helper()
	b.SetBytes(int64(len(src)))
	b.ReportAllocs()
	for b.Loop() {
		if _, diags := hclsyntax.ParseConfig([]byte(src), "", hcl.Pos{Line: 1, Column: 1}); diags.HasErrors() {
			b.Fatal(diags)
		}
	}
}
