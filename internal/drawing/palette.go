package drawing

import (
	"cmp"
	"image"
	"image/color"
	"slices"
)

const (
	maxColors  = 256    // what one byte a pixel can name
	photoLikes = 16_000 // more different colors than flat shapes and their edges make
)

// flat makes a picture of few colors several times smaller: one byte a pixel, the most
// common colors as they are and the shades of edges as the nearest of them. A picture
// with a photo in it stays as it is.
func flat(img *image.RGBA) image.Image {
	counts := make(map[color.RGBA]int, 4096)
	for i := 0; i+3 < len(img.Pix); {
		c, n := run(img.Pix[i:])
		if counts[c] += n; len(counts) > photoLikes {
			return img
		}
		i += 4 * n
	}
	colors := byCount(counts)
	palette := colors[:min(len(colors), maxColors)]
	index := make(map[color.RGBA]uint8, len(colors))
	for _, c := range colors {
		index[c] = nearest(palette, c)
	}
	out := image.NewPaletted(img.Bounds(), nil)
	for _, c := range palette {
		out.Palette = append(out.Palette, c)
	}
	for o := 0; o < len(out.Pix); {
		c, n := run(img.Pix[4*o:])
		for i, name := 0, index[c]; i < n; i++ {
			out.Pix[o+i] = name
		}
		o += n
	}
	return out
}

// run is the color of the next pixel and how many of it follow each other.
func run(p []uint8) (c color.RGBA, n int) {
	for n = 1; 4*n+3 < len(p) && p[4*n] == p[0] && p[4*n+1] == p[1] && p[4*n+2] == p[2]; n++ {
	}
	return color.RGBA{R: p[0], G: p[1], B: p[2], A: 0xFF}, n
}

// byCount lists colors, the most common first; the order is the same every time.
func byCount(counts map[color.RGBA]int) []color.RGBA {
	colors := make([]color.RGBA, 0, len(counts))
	for c := range counts {
		colors = append(colors, c)
	}
	slices.SortFunc(colors, func(a, b color.RGBA) int {
		return cmp.Or(cmp.Compare(counts[b], counts[a]), cmp.Compare(a.R, b.R), cmp.Compare(a.G, b.G), cmp.Compare(a.B, b.B))
	})
	return colors
}

func nearest(palette []color.RGBA, c color.RGBA) uint8 {
	best, at := 1<<30, 0
	for i, p := range palette {
		dr, dg, db := int(p.R)-int(c.R), int(p.G)-int(c.G), int(p.B)-int(c.B)
		if d := dr*dr + dg*dg + db*db; d < best {
			best, at = d, i
		}
	}
	return uint8(at)
}
