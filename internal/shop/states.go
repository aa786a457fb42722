package shop

import (
	"fmt"
	"slices"
	"strings"

	"github.com/goccy/go-yaml/ast"
)

// contiguous are the 48 states and the capital that a truck reaches from any of them.
const contiguous = "AL AZ AR CA CO CT DE DC FL GA ID IL IN IA KS KY LA ME MD MA MI MN MS MO MT NE NV NH NJ NM NY NC " +
	"ND OH OK OR PA RI SC SD TN TX UT VT VA WA WV WI WY"

// farther are what the Postal Service has codes for beside: two states, islands, and
// military mail.
const farther = "AK HI AS GU MP PR VI AA AE AP"

// State is a two-letter postal code.
type State string

func (s *State) set(text string) error {
	code := strings.ToUpper(text)
	if !slices.Contains(strings.Fields(contiguous+" "+farther), code) {
		return fmt.Errorf("%q is not a state's postal code: write its two letters, like MN", text)
	}
	*s = State(code)
	return nil
}

// States are the postal codes that the shop ships to; empty is everywhere. It is written
// as a list, or as one of two words: all, contiguous.
type States []string

func (s *States) bind(b *binder, path string, node ast.Node) {
	if word, ok := textOf(node); ok {
		switch word {
		case "all":
			*s = nil
		case "contiguous":
			*s = strings.Fields(contiguous)
		default:
			b.wrongAt(path, "%q is not where a shop ships to: write all, contiguous, or a list like [MN, WI]", word)
		}
		return
	}
	seq, ok := node.(*ast.SequenceNode)
	if !ok || len(seq.Values) == 0 {
		b.wrongAt(path, "write all, contiguous, or a list like [MN, WI]")
		return
	}
	*s = nil
	for i, item := range seq.Values {
		var one State
		at := fmt.Sprintf("%s[%d]", path, i+1)
		b.at[at] = positionOf(item)
		b.scalar(at, item, &one)
		*s = append(*s, string(one))
	}
}
