package drawing

import "image/color"

// The colors of the house: dark blue ink on warm paper, a yellow tape, red where its ends
// touch. Nothing is told by color alone.
var (
	paper    = rgb(0xFFFDF7)
	ground   = rgb(0xEFF3F1)
	ink      = rgb(0x1C2B3A)
	faint    = rgb(0x5E6B75)
	hair     = rgb(0xC9D1D4)
	red      = rgb(0xC2152F)
	yellow   = rgb(0xFFD23C)
	paleGold = rgb(0xFFF0B8)
	wood     = rgb(0xDDAA6A)
	woodLine = rgb(0x7C4F22)
	metal    = rgb(0xA9BAC6)
	steel    = rgb(0x6E8798)
	metalInk = rgb(0x2C4052)
	plastic  = rgb(0xC4E7F5)
	pane     = rgb(0x1F789C)
	roofing  = rgb(0x8A7A6D)
	shingle  = rgb(0x54483F)
	lead     = rgb(0x4C5761)
	white    = rgb(0xFFFFFF)
)

func rgb(hex uint32) color.RGBA {
	return color.RGBA{R: uint8(hex >> 16), G: uint8(hex >> 8), B: uint8(hex), A: 0xFF}
}

// paled is the color mixed with so much paper: parts that are not measured stand back.
func paled(c color.RGBA, share float64) color.RGBA {
	if c.A == 0 {
		return c
	}
	mix := func(a, b uint8) uint8 { return uint8(float64(a)*(1-share) + float64(b)*share + 0.5) }
	return color.RGBA{R: mix(c.R, paper.R), G: mix(c.G, paper.G), B: mix(c.B, paper.B), A: 0xFF}
}
