package drawing

import (
	"bytes"
	"html"
	"regexp"
	"strconv"
)

// textOpens finds the font of a text, and textParts its pieces, as the library writes them.
var (
	textOpens = regexp.MustCompile(`<text [^>]*style="font: (700 )?([0-9.]+)px [^>]*>`)
	textParts = regexp.MustCompile(`<tspan ([^>]*)>([^<]*)</tspan>`)
)

// setWidths says in an SVG how wide each text is. Where our font is not installed another
// is squeezed or stretched to it, and nothing comes to overlap.
func setWidths(svg []byte) []byte {
	var out bytes.Buffer
	opens := textOpens.FindAllSubmatchIndex(svg, -1)
	last := 0
	for _, m := range opens {
		end := m[1] + bytes.Index(svg[m[1]:], []byte("</text>"))
		size, err := strconv.ParseFloat(string(svg[m[4]:m[5]]), 64)
		if err != nil || end < m[1] {
			continue
		}
		l := look{size: size, bold: m[2] >= 0}
		out.Write(svg[last:m[1]])
		out.Write(textParts.ReplaceAllFunc(svg[m[1]:end], func(part []byte) []byte {
			p := textParts.FindSubmatch(part)
			w := measure(html.UnescapeString(string(p[2])), l)
			s := append([]byte("<tspan "), p[1]...)
			s = append(s, ` textLength="`...)
			s = strconv.AppendFloat(s, w, 'f', 2, 64)
			s = append(s, `" lengthAdjust="spacingAndGlyphs">`...)
			return append(append(s, p[2]...), "</tspan>"...)
		}))
		last = end
	}
	out.Write(svg[last:])
	return out.Bytes()
}
