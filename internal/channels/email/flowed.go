package email

import "strings"

// unflow joins the lines that a format=flowed text broke only for transport: RFC 3676
// section 4. A line that ends in a space flows into the next of the same quote depth;
// "-- " is a signature's mark and does not flow (section 4.3).
func unflow(text string, delSp bool) string {
	var out strings.Builder
	var para strings.Builder
	depth, open := 0, false
	flush := func() {
		if open {
			out.WriteString(strings.Repeat(">", depth))
			if depth > 0 {
				out.WriteByte(' ')
			}
			out.WriteString(para.String())
			out.WriteByte('\n')
			para.Reset()
			open = false
		}
	}
	for line := range strings.SplitSeq(strings.ReplaceAll(text, "\r\n", "\n"), "\n") {
		d := len(line) - len(strings.TrimLeft(line, ">"))
		content := strings.TrimPrefix(line[d:], " ") // space-stuffing, section 4.4
		if d != depth || content == "-- " {
			flush()
		}
		depth, open = d, true
		flows := strings.HasSuffix(content, " ") && content != "-- "
		if flows && delSp {
			content = content[:len(content)-1]
		}
		para.WriteString(content)
		if !flows {
			flush()
		}
	}
	flush()
	return out.String()
}
