package cli_test

import (
	"fmt"
	"os"
	"path/filepath"

	"github.com/hashicorp/hcl/v2"
	"github.com/hashicorp/hcl/v2/hclsyntax"
)

// bareParse is a program that parses the records of its folder and does nothing else.
func bareParse() {
	files, err := filepath.Glob("runs/*.hcl")
	for _, name := range files {
		var text []byte
		if text, err = os.ReadFile(name); err != nil {
			break
		}
		if _, diags := hclsyntax.ParseConfig(text, name, hcl.InitialPos); diags.HasErrors() {
			err = diags
		}
	}
	if err != nil || len(files) == 0 {
		fmt.Fprintln(os.Stderr, len(files), err)
		os.Exit(1)
	}
}
