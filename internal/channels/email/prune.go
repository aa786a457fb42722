package email

import (
	"strings"

	"golang.org/x/net/html"
	"golang.org/x/net/html/atom"
)

// Mail programs mark signatures and earlier mails by classes and ids of their own. All
// names: seen in practice, no source.
var (
	signatureNames = []string{"gmail_signature", "moz-signature", "ms-outlook-mobile-signature", "mobile-signature",
		"protonmail_signature_block", "applemailsignature", "yahoo-signature", "zmail_signature"}
	originalNames = []string{"divrplyfwdmsg", "appendonsend", "yahoo_quoted", "outlookmessageheader", "reply-intro"}
)

// maxNesting bounds quotes within quotes and lists within lists: each level writes all
// that is in it anew. People nest a handful.
const maxNesting = 8

// flatten makes plain blocks of what is nested deeper.
func flatten(n *html.Node, depth int) {
	for c := n.FirstChild; c != nil; c = c.NextSibling {
		d := depth
		switch c.DataAtom {
		case atom.Blockquote, atom.Ul, atom.Ol, atom.Li, atom.Dl, atom.Dd:
			d++
		}
		if d > maxNesting && d > depth {
			c.Data, c.DataAtom = "div", atom.Div
		}
		flatten(c, d)
	}
}

// prune changes the tree before it is converted: what can't be seen goes, signatures
// get their mark, and earlier mails that bear no quote marks get one.
func prune(n *html.Node) {
	for c := n.FirstChild; c != nil; {
		next := c.NextSibling
		switch {
		case c.Type == html.ElementNode && hiddenNode(c):
			n.RemoveChild(c)
		case c.Type == html.ElementNode && isSignature(c):
			n.InsertBefore(line(string(signatureOpen)), c)
			n.InsertBefore(line(string(signatureClose)), next)
			prune(c)
		case c.Type == html.ElementNode && named(c, originalNames) && !allQuoted(c):
			n.InsertBefore(line("-----Original Message-----"), c)
			prune(c)
		default:
			prune(c)
		}
		c = next
	}
}

func line(text string) *html.Node {
	div := &html.Node{Type: html.ElementNode, Data: "div", DataAtom: atom.Div}
	div.AppendChild(&html.Node{Type: html.TextNode, Data: text})
	return div
}

// allQuoted reports whether a block's words are in blockquotes anyway.
func allQuoted(n *html.Node) bool {
	for c := n.FirstChild; c != nil; c = c.NextSibling {
		if c.Type == html.ElementNode && (c.DataAtom == atom.Blockquote || allQuoted(c)) {
			return true
		}
	}
	return false
}

func isSignature(n *html.Node) bool {
	return strings.EqualFold(attribute(n, "id"), "signature") || named(n, signatureNames) ||
		attribute(n, "data-smartmail") == "gmail_signature"
}

func named(n *html.Node, names []string) bool {
	id := strings.ToLower(attribute(n, "id") + " " + attribute(n, "class"))
	for _, name := range names {
		if strings.Contains(id, name) {
			return true
		}
	}
	return false
}

// hiddenNode is what a reader doesn't see: preview lines, tracking pictures, styles.
func hiddenNode(n *html.Node) bool {
	switch n.DataAtom {
	case atom.Script, atom.Style, atom.Head, atom.Title, atom.Template, atom.Noscript, atom.Object, atom.Svg:
		return true
	case atom.Img:
		return attribute(n, "width") == "1" || attribute(n, "height") == "1"
	}
	style := strings.ToLower(strings.ReplaceAll(attribute(n, "style"), " ", ""))
	for _, s := range []string{"display:none", "visibility:hidden", "mso-hide:all", "font-size:0;", "font-size:0px"} {
		if strings.Contains(style, s) {
			return true
		}
	}
	return strings.HasSuffix(style, "font-size:0")
}
