package drawing

// textRow is wrapped text.
func textRow(s string, l look, w float64, most int) row {
	lines := wrap(s, w, most, l)
	high := l.size * 1.3
	return row{h: float64(len(lines))*high + 0.4, ink: func(p *page, x, y float64) {
		for i, s := range lines {
			p.write("text", x, y+high*float64(i)+l.size, s, l)
		}
	}}
}

// cell is a column of a table's row.
type cell struct {
	s    string
	l    look
	w    float64
	most int
}

// tableRow sets cells beside each other.
func tableRow(cells ...cell) row {
	const gap = 2.0
	rows := make([]row, len(cells))
	h := 0.0
	for i, c := range cells {
		rows[i] = textRow(c.s, c.l, c.w-gap, c.most)
		h = max(h, rows[i].h)
	}
	return row{h: h + 0.3, ink: func(p *page, x, y float64) {
		for i, r := range rows {
			r.ink(p, x, y)
			x += cells[i].w
		}
	}}
}
