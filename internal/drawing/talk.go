package drawing

import (
	"errors"
	"strings"
)

// TalkData is a talk to be shown as people see it on a phone.
type TalkData struct {
	Title string
	Lines []TalkLine
}

// TalkLine is one message. Mine is that of whoever holds the phone: the customer.
type TalkLine struct {
	Mine bool
	Text string
}

// Measures of a talk, in CSS pixels.
const (
	talkColumn = 380.0
	talkBubble = 300.0
	talkPad    = 12.0
	talkGap    = 9.0
	talkTop    = 58.0
)

var (
	lookTalk      = look{size: 15, color: ink}
	lookTalkTitle = look{size: 19, bold: true, color: ink}
)

const (
	talkRow     = 19.5
	mostTalkRow = 40 // rows of one message; longer ones are cut, and show it
)

// Talk is a talk in so many columns of about the same height, read from the left.
func Talk(d TalkData, columns int) (Drawing, error) {
	if len(d.Lines) == 0 || columns < 1 || columns > 4 {
		return Drawing{}, errors.New("talk: want messages, and one to four columns")
	}
	bubbles := make([]bubble, len(d.Lines))
	for i, line := range d.Lines {
		bubbles[i] = newBubble(line)
	}
	in, high := spread(bubbles, columns)
	p := page{w: talkPad + float64(columns)*(talkColumn+talkPad), h: talkTop + high + talkPad}
	p.draw("paper", rect(0, 0, p.w, p.h), pen{fill: paper})
	p.draw("strip", rect(0, 0, p.w, 7), pen{fill: yellow})
	p.write("title", talkPad, 36, fit(clean(d.Title, 120), p.w-2*talkPad, lookTalkTitle), lookTalkTitle)
	for c, list := range in {
		x, y := talkPad+float64(c)*(talkColumn+talkPad), talkTop
		if c > 0 {
			p.draw("rule", line(x-talkPad/2, talkTop, x-talkPad/2, p.h-talkPad), pen{line: hair, width: 1})
		}
		for i := range list {
			list[i].ink(&p, x, y)
			y += list[i].h + talkGap
		}
	}
	return Drawing{pages: []page{p}, title: clean(d.Title, 120), unit: 0.2}, nil
}

// bubble is one message, broken into rows.
type bubble struct {
	mine bool
	rows []string
	w, h float64
}

func newBubble(line TalkLine) bubble {
	b := bubble{mine: line.Mine}
	for _, part := range strings.Split(line.Text, "\n") {
		b.rows = append(b.rows, wrap(clean(part, 2000), talkBubble-2*talkPad, mostTalkRow, lookTalk)...)
	}
	for _, row := range b.rows {
		b.w = max(b.w, measure(row, lookTalk)+2*talkPad)
	}
	b.h = float64(len(b.rows))*talkRow + 1.1*talkPad
	return b
}

func (b *bubble) ink(p *page, x, y float64) {
	fill, edge := white, hair
	if b.mine {
		x += talkColumn - b.w
		fill, edge = plastic, pane
	}
	p.draw("bubble", rounded(x, y, x+b.w, y+b.h, 10), pen{fill: fill, line: edge, width: 1})
	for i, row := range b.rows {
		p.write("message", x+talkPad, y+0.55*talkPad+float64(i+1)*talkRow-4.5, row, lookTalk)
	}
}

// spread puts messages into columns, each as high as needed, so that the highest is as
// low as can be.
func spread(bubbles []bubble, columns int) (in [][]bubble, high float64) {
	least, all := 0.0, 0.0
	for i := range bubbles {
		least, all = max(least, bubbles[i].h), all+bubbles[i].h+talkGap
	}
	for high = max(least, all/float64(columns)); ; high += talkRow / 2 {
		if in = filled(bubbles, high); len(in) <= columns {
			return in, high
		}
	}
}

// filled is how the columns are where none is higher than so much.
func filled(bubbles []bubble, high float64) [][]bubble {
	in, y := [][]bubble{nil}, 0.0
	for i := range bubbles {
		if y > 0 && y+bubbles[i].h > high {
			in, y = append(in, nil), 0
		}
		in[len(in)-1] = append(in[len(in)-1], bubbles[i])
		y += bubbles[i].h + talkGap
	}
	return in
}
