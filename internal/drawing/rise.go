package drawing

// stickHalf is how far the stick reaches past the middle, away from the tape: clear of the
// words beside it.
const stickHalf = 54.0

// riseViews shows how high the dome rises: a stick lies across its top, and the tape
// stands on the flat lip under it.
func riseViews(p *page, y float64, language string) float64 {
	p.write("view", inset, y+20, wordCut.in(language), lookView)
	f := &figure{p: p, cx: p.w / 2, top: y + 58 + domeHigh, focus: piecePlastic}
	f.section()
	f.labels(language)
	x := f.cx + (footHalf+holeHalf)/2 + 0.5
	stick := pen{fill: paleGold, line: woodLine, width: 1.2}
	p.draw("stick", rect(f.cx-stickHalf, f.y(domeHigh+7), x+36, f.y(domeHigh)), stick)
	p.write("label", f.cx-stickHalf, f.y(domeHigh+12), wordStick.in(language), lookLabel)
	p.face(x-11, f.y(lipHigh), x+11, f.y(lipHigh))
	p.face(x-11, f.y(domeHigh), x+11, f.y(domeHigh))
	p.tape(x, f.y(lipHigh), x, f.y(domeHigh))
	p.badge(x+20, f.y(lipHigh+19), "1")
	p.badge(x+20, f.y(domeHigh-13), "2")
	viewAt := f.y(deckLow) + 30
	v := &plan{p: p, cx: f.cx, cy: viewAt + 22 + ringHalf - deeper}
	v.roof()
	v.retainer()
	p.draw("stick", rect(v.cx-stickHalf, v.cy-6, x+36, v.cy+6), stick)
	p.draw("tape", rect(x-3, v.cy-6.5, x+3, v.cy+6.5), pen{fill: yellow, line: ink, width: 1.4})
	p.write("view", inset, viewAt, wordAbove.in(language), lookView)
	return v.cy + ringHalf - deeper + 50
}
