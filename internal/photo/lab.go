package photo

import (
	"bytes"
	"context"
	"crypto/sha256"
	"errors"
	"fmt"
	"image"
	"image/jpeg"
	"io"
)

// Lab opens pictures. It may be used by several goroutines; those that need much
// memory (every HEIC, anything over some 16 megapixels) go one at a time.
type Lab struct {
	limits Limits
	costly chan struct{}
}

// NewLab makes a Lab.
func NewLab(limits Limits) *Lab {
	return &Lab{limits: limits.orDefault(), costly: make(chan struct{}, 1)}
}

// speck is the side under which both sides of a picture make it no photo: signature
// logos and tracking dots.
const speck = 64

// costlyMemory is how much one decoding may take beside others.
const costlyMemory = 128 << 20

// Open reads a picture and makes it safe. A file that is not taken gives *Refused;
// any other error (reading, the context) may be tried again.
func (l *Lab) Open(ctx context.Context, r io.Reader) (Photo, error) {
	file, err := io.ReadAll(io.LimitReader(r, l.limits.Bytes+1))
	if err != nil {
		return Photo{}, fmt.Errorf("read photo: %w", err)
	}
	h, err := l.admit(file)
	if err != nil {
		return Photo{}, err
	}
	pixels, err := l.pixels(ctx, h, file)
	if err != nil {
		return Photo{}, err
	}
	return l.develop(h, file, pixels)
}

// admit looks at a file before its pixels.
func (l *Lab) admit(file []byte) (Header, error) {
	if int64(len(file)) > l.limits.Bytes {
		return Header{}, refuse(WhyTooLarge, KindOf(file), fmt.Errorf("over %d bytes", l.limits.Bytes))
	}
	h, err := ReadHeader(file)
	if err != nil {
		return h, err
	}
	switch {
	case int64(h.Width)*int64(h.Height) > l.limits.Pixels, h.memory() > l.limits.Memory:
		return h, refuse(WhyTooLarge, h.Kind, fmt.Errorf("%d x %d pixels", h.Width, h.Height))
	case h.Width < speck && h.Height < speck:
		return h, refuse(WhyUnderSize, h.Kind, nil)
	}
	return h, nil
}

// pixels decodes, alone where it is costly. A decoder can't be stopped: when the
// context ends it goes on by itself, and holds back other costly ones until it is done.
func (l *Lab) pixels(ctx context.Context, h Header, file []byte) (image.Image, error) {
	release := func() {}
	if h.Kind == HEIC || h.memory() > costlyMemory {
		select {
		case l.costly <- struct{}{}:
			release = func() { <-l.costly }
		case <-ctx.Done():
			return nil, fmt.Errorf("wait to decode photo: %w", ctx.Err())
		}
	}
	type result struct {
		pixels image.Image
		err    error
	}
	done := make(chan result, 1)
	go func() {
		defer release()
		pixels, err := decode(h, file)
		done <- result{pixels, err}
	}()
	select {
	case r := <-done:
		return r.pixels, r.err
	case <-ctx.Done():
		return nil, fmt.Errorf("decode photo: %w", ctx.Err())
	}
}

// develop makes the stored picture, its thumbnail and what is known of its look.
func (l *Lab) develop(h Header, file []byte, pixels image.Image) (Photo, error) {
	stored := turn(shrink(pixels, l.limits.Side), orientation(h.Kind, file))
	gray := grayOf(stored)
	p := Photo{Kind: h.Kind, Width: stored.Rect.Dx(), Height: stored.Rect.Dy(), SHA256: sha256.Sum256(file),
		Likeness: likenessOf(gray), Look: lookOf(gray)}
	p.Troubles = p.Look.troubles(p.Width, p.Height)
	var err, thumbErr error
	p.JPEG, err = encode(stored, 85)
	p.Thumb, thumbErr = encode(shrink(stored, l.limits.Thumb), 75)
	if err := errors.Join(err, thumbErr); err != nil {
		return Photo{}, fmt.Errorf("encode photo: %w", err)
	}
	return p, nil
}

// encode writes pixels alone: the standard encoder knows no metadata.
func encode(m image.Image, quality int) ([]byte, error) {
	var b bytes.Buffer
	err := jpeg.Encode(&b, m, &jpeg.Options{Quality: quality})
	return b.Bytes(), err
}
