package block

import (
	"bytes"

	"github.com/hashicorp/hcl/v2"
	"github.com/hashicorp/hcl/v2/hclsyntax"
)

// bounded reports whether the parser's recursion on the text is bounded. The
// outline has made sure of that as far as it understands the text; where there
// are so many brackets or operators that a misunderstanding could overflow the
// stack, which ends the program, the parser's own tokens are counted too.
func bounded(text []byte) bool {
	const few = 5000
	count := 0
	for _, c := range text {
		switch c {
		case '(', '[', '{', '?', '!', '*':
			count++
		}
	}
	if count < few && bytes.Count(text, []byte{'-'}) < 4*few {
		return true
	}
	return boundedTokens(text)
}

func boundedTokens(text []byte) bool {
	const most = 1000
	tokens, _ := hclsyntax.LexConfig(text, "", hcl.Pos{Line: 1, Column: 1})
	depth, operators, minuses := 0, 0, 0
	for _, t := range tokens {
		switch t.Type { //nolint:exhaustive // the other tokens neither nest nor recurse
		case hclsyntax.TokenOBrace, hclsyntax.TokenOBrack, hclsyntax.TokenOParen, hclsyntax.TokenTemplateInterp:
			depth++
		case hclsyntax.TokenCBrace, hclsyntax.TokenCBrack, hclsyntax.TokenCParen, hclsyntax.TokenTemplateSeqEnd:
			depth = max(0, depth-1)
		case hclsyntax.TokenStar, hclsyntax.TokenQuestion, hclsyntax.TokenBang, hclsyntax.TokenTemplateControl:
			operators++
		case hclsyntax.TokenMinus:
			minuses++
			if minuses > most {
				return false
			}
			continue
		case hclsyntax.TokenComment, hclsyntax.TokenNewline:
			continue
		}
		minuses = 0
		if depth > most || operators > most {
			return false
		}
	}
	return true
}
