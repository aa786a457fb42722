package torture

import (
	"bytes"
	"hash/fnv"
	"image"
	"image/color"
	"image/jpeg"
	"math/rand/v2"
)

// picture is a photo that is like no other: a field of colors that follows from a name.
func picture(name string) []byte {
	sum := fnv.New64a()
	sum.Write([]byte(name))
	d := rand.New(rand.NewPCG(sum.Sum64(), 1))
	const w, h, block = 320, 240, 40
	m := image.NewRGBA(image.Rect(0, 0, w, h))
	for y := 0; y < h; y += block {
		for x := 0; x < w; x += block {
			c := color.RGBA{uint8(d.IntN(256)), uint8(d.IntN(256)), uint8(d.IntN(256)), 255}
			for j := range block {
				for i := range block {
					m.SetRGBA(x+i, y+j, c)
				}
			}
		}
	}
	var b bytes.Buffer
	if err := jpeg.Encode(&b, m, nil); err != nil {
		panic(err) // into memory, of a picture that is one
	}
	return b.Bytes()
}
