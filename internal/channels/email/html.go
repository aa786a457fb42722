package email

import (
	"bytes"
	"regexp"
	"strings"

	"github.com/JohannesKaufmann/html-to-markdown/v2/converter"
	"github.com/JohannesKaufmann/html-to-markdown/v2/plugin/base"
	"github.com/JohannesKaufmann/html-to-markdown/v2/plugin/commonmark"
	"golang.org/x/net/html"
)

// htmlText turns an HTML part into text: quotes get "> ", a mail that stands below a
// mark of its program gets the words for it, inline pictures become marks.
func htmlText(source string) string {
	doc, err := html.Parse(strings.NewReader(source))
	if err != nil { // nested past what the library takes
		return cleanMarks(plainText(source))
	}
	cleanTree(doc)
	prune(doc)
	flatten(doc, 0)
	out, err := newConverter().ConvertNode(doc)
	if err != nil {
		return cleanMarks(plainText(source))
	}
	// The library writes these two for markdown's sake.
	return strings.NewReplacer("&lt;", "<", "&gt;", ">").Replace(edges(string(out)))
}

// cleanTree keeps entities such as &#xE000; from making marks.
func cleanTree(n *html.Node) {
	if n.Type == html.TextNode {
		n.Data = cleanMarks(n.Data)
	}
	for c := n.FirstChild; c != nil; c = c.NextSibling {
		cleanTree(c)
	}
}

// plainText takes the words alone; for HTML that can't be built into a tree.
func plainText(source string) string {
	var b strings.Builder
	z := html.NewTokenizer(strings.NewReader(source))
	hidden := 0
	for {
		switch z.Next() {
		case html.ErrorToken:
			return b.String()
		case html.StartTagToken:
			if name, _ := z.TagName(); string(name) == "style" || string(name) == "script" {
				hidden++
			}
		case html.EndTagToken:
			if name, _ := z.TagName(); string(name) == "style" || string(name) == "script" {
				hidden = max(hidden-1, 0)
			}
			b.WriteByte('\n')
		case html.TextToken:
			if hidden == 0 {
				b.Write(z.Text())
			}
		}
	}
}

func newConverter() *converter.Converter {
	c := converter.NewConverter(
		converter.WithPlugins(base.NewBasePlugin(), commonmark.NewCommonmarkPlugin(commonmark.WithListEndComment(false))),
		converter.WithEscapeMode(converter.EscapeModeDisabled),
	)
	for _, tag := range []string{"strong", "b", "em", "i", "u", "s", "a", "code", "font", "span", "kbd"} {
		c.Register.RendererFor(tag, converter.TagTypeInline, base.RenderAsPlaintextWrapper, converter.PriorityEarly)
	}
	for _, tag := range []string{"p", "h1", "h2", "h3", "h4", "h5", "h6", "pre", "table"} {
		c.Register.RendererFor(tag, converter.TagTypeBlock, base.RenderAsPlaintextWrapper, converter.PriorityEarly)
	}
	for _, tag := range []string{"div", "tr", "center", "section", "article", "caption"} {
		c.Register.RendererFor(tag, converter.TagTypeBlock, renderLine, converter.PriorityEarly)
	}
	c.Register.RendererFor("blockquote", converter.TagTypeBlock, renderQuote, converter.PriorityEarly)
	for _, tag := range []string{"td", "th"} {
		c.Register.RendererFor(tag, converter.TagTypeInline, renderCell, converter.PriorityEarly)
	}
	c.Register.RendererFor("br", converter.TagTypeInline, renderBreak, converter.PriorityEarly)
	c.Register.RendererFor("hr", converter.TagTypeBlock, renderGap, converter.PriorityEarly)
	c.Register.RendererFor("img", converter.TagTypeInline, renderPicture, converter.PriorityEarly)
	c.Register.RendererFor("sup", converter.TagTypeInline, renderRaised, converter.PriorityEarly)
	return c
}

func renderLine(ctx converter.Context, w converter.Writer, n *html.Node) converter.RenderStatus {
	w.WriteRune(lineEdge)
	ctx.RenderChildNodes(ctx, w, n)
	w.WriteRune(lineEdge)
	return converter.RenderSuccess
}

var (
	lineEdges  = regexp.MustCompile(string(lineEdge) + "(\\s*" + string(lineEdge) + ")*")
	closingGap = regexp.MustCompile("([^\n" + string(lineEdge) + "])\n" + string(lineEdge))
)

// edges turns the edges of lines that meet into one line break; a line break right
// before an edge is the same break once more.
func edges(s string) string {
	s = closingGap.ReplaceAllString(s, "$1"+string(lineEdge))
	return lineEdges.ReplaceAllStringFunc(s, func(run string) string {
		return strings.Repeat("\n", 1+strings.Count(run, "\n"))
	})
}

// renderQuote does as the library does, but after lines have found their edges.
func renderQuote(ctx converter.Context, w converter.Writer, n *html.Node) converter.RenderStatus {
	var inner bytes.Buffer
	ctx.RenderChildNodes(ctx, &inner, n)
	w.WriteString("\n\n")
	for line := range strings.SplitSeq(strings.TrimSpace(edges(inner.String())), "\n") {
		w.WriteString("> " + line + "\n")
	}
	w.WriteString("\n")
	return converter.RenderSuccess
}

func renderCell(ctx converter.Context, w converter.Writer, n *html.Node) converter.RenderStatus {
	ctx.RenderChildNodes(ctx, w, n)
	w.WriteString(" ")
	return converter.RenderSuccess
}

func renderBreak(_ converter.Context, w converter.Writer, _ *html.Node) converter.RenderStatus {
	w.WriteString("\n")
	return converter.RenderSuccess
}

func renderGap(_ converter.Context, w converter.Writer, _ *html.Node) converter.RenderStatus {
	w.WriteString("\n\n")
	return converter.RenderSuccess
}

func renderPicture(_ converter.Context, w converter.Writer, n *html.Node) converter.RenderStatus {
	if id, ok := strings.CutPrefix(strings.ToLower(attribute(n, "src")), "cid:"); ok {
		w.WriteString(" " + pictureMark(id) + " ")
	}
	return converter.RenderSuccess
}

// renderRaised keeps 25<sup>1</sup>/<sub>2</sub> from becoming 251/2.
func renderRaised(ctx converter.Context, w converter.Writer, n *html.Node) converter.RenderStatus {
	w.WriteString(" ")
	ctx.RenderChildNodes(ctx, w, n)
	return converter.RenderSuccess
}

func attribute(n *html.Node, key string) string {
	for _, a := range n.Attr {
		if strings.EqualFold(a.Key, key) {
			return strings.TrimSpace(a.Val)
		}
	}
	return ""
}
