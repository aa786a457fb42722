package drawing

import (
	"errors"
	"fmt"

	"github.com/tdewolff/canvas"
	"golang.org/x/image/font/gofont/gobold"
	"golang.org/x/image/font/gofont/goregular"
)

// fontStack names the font in SVG, and those to use where it is not installed.
const fontStack = "Go, Arial, Helvetica, sans-serif"

const pointsPerUnit = 72 / 25.4 // canvas takes letters in points and all else in units

// typeset loads the two fonts; each rendering has its own, so that drawings can be
// rendered side by side.
func typeset() (*canvas.FontFamily, error) {
	f := canvas.NewFontFamily(fontStack)
	err := f.LoadFont(goregular.TTF, 0, canvas.FontRegular)
	if err == nil {
		err = f.LoadFont(gobold.TTF, 0, canvas.FontBold)
	}
	if err != nil {
		return nil, fmt.Errorf("loading fonts: %w", err)
	}
	return f, nil
}

// paint puts pages one below the other onto one canvas.
func paint(pages []page, gap float64) (c *canvas.Canvas, err error) {
	if len(pages) == 0 {
		return nil, errors.New("nothing was drawn")
	}
	fonts, err := typeset()
	if err != nil {
		return nil, err
	}
	w, h := extent(pages, gap)
	c = canvas.New(w, h)
	ctx := canvas.NewContext(c)
	ctx.SetCoordSystem(canvas.CartesianIV)
	if len(pages) > 1 {
		p := pen{fill: hair}
		p.apply(ctx)
		ctx.DrawPath(0, 0, rect(0, 0, w, h))
	}
	top := 0.0
	for i := range pages {
		for j := range pages[i].marks {
			pages[i].marks[j].paint(ctx, top, fonts)
		}
		top += pages[i].h + gap
	}
	return c, nil
}

func extent(pages []page, gap float64) (w, h float64) {
	for i := range pages {
		w = max(w, pages[i].w)
		h += pages[i].h
	}
	return w, h + gap*float64(len(pages)-1)
}

func (m *mark) paint(ctx *canvas.Context, top float64, fonts *canvas.FontFamily) {
	switch {
	case m.path != nil:
		m.pen.apply(ctx)
		ctx.DrawPath(0, top, m.path)
	case m.img != nil:
		ctx.DrawImage(m.x, m.y+top, m.img, canvas.DPMM(float64(m.img.Bounds().Dx())/m.width))
	default:
		m.letter(ctx, top, fonts)
	}
}

func (m *mark) letter(ctx *canvas.Context, top float64, fonts *canvas.FontFamily) {
	style := canvas.FontRegular
	if m.look.bold {
		style = canvas.FontBold
	}
	face := fonts.Face(m.look.size*pointsPerUnit, m.look.color, style, canvas.FontNormal)
	row := canvas.NewTextLine(face, m.text, m.look.align)
	if !m.look.turned {
		ctx.DrawText(m.x, m.y+top, row)
		return
	}
	ctx.Push()
	ctx.Translate(m.x, m.y+top)
	ctx.Rotate(-90)
	ctx.DrawText(0, 0, row)
	ctx.Pop()
}

func (p *pen) apply(ctx *canvas.Context) {
	ctx.SetFillColor(p.fill)
	ctx.SetStrokeColor(p.line)
	ctx.SetStrokeWidth(p.width)
	ctx.SetStrokeCapper(canvas.RoundCap)
	ctx.SetStrokeJoiner(canvas.RoundJoin)
	ctx.SetDashes(0, p.dashes...)
}
