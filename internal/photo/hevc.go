package photo

import "encoding/binary"

// hevcSize finds the largest picture size in the sequence parameter sets of a decoder
// configuration (hvcC); 0 where there is none that can be read.
func hevcSize(conf []byte) (width, height uint64) {
	const fixed = 23 // bytes before the arrays, ISO/IEC 14496-15 section 8.3.3.1.2
	if len(conf) < fixed {
		return 0, 0
	}
	arrays, b := int(conf[22]), conf[fixed:]
	for ; arrays > 0 && len(b) >= 3; arrays-- {
		kind, count := b[0]&0x3F, int(binary.BigEndian.Uint16(b[1:]))
		b = b[3:]
		for ; count > 0 && len(b) >= 2; count-- {
			size := int(binary.BigEndian.Uint16(b))
			if size > len(b)-2 {
				return width, height
			}
			if w, h := sizeInParameters(kind, b[2:2+size]); w*h > width*height {
				width, height = w, h
			}
			b = b[2+size:]
		}
	}
	return width, height
}

// sizeInParameters reads pic_width_in_luma_samples and pic_height_in_luma_samples of a
// sequence parameter set (ITU-T H.265, section 7.3.2.2.1).
func sizeInParameters(kind byte, unit []byte) (uint64, uint64) {
	const sequenceParameters = 33
	if kind != sequenceParameters || len(unit) < 3 {
		return 0, 0
	}
	r := bitReader{b: unescaped(unit[2:])}
	r.skip(4) // sps_video_parameter_set_id
	layers := int(r.bits(3))
	r.skip(1)
	r.skipProfile(layers)
	r.golomb() // sps_seq_parameter_set_id
	if chroma := r.golomb(); chroma == 3 {
		r.skip(1)
	}
	width, height := r.golomb(), r.golomb()
	if r.ended() || width > 1<<20 || height > 1<<20 {
		return 0, 0
	}
	return width, height
}

// skipProfile passes over profile_tier_level (section 7.3.3).
func (r *bitReader) skipProfile(layers int) {
	r.skip(88 + 8)
	if layers == 0 {
		return
	}
	var profile, level [8]bool
	for i := range 8 {
		if i < layers {
			profile[i], level[i] = r.bits(1) == 1, r.bits(1) == 1
		} else {
			r.skip(2)
		}
	}
	for i := range layers {
		if profile[i] {
			r.skip(88)
		}
		if level[i] {
			r.skip(8)
		}
	}
}

// unescaped drops the emulation prevention bytes (section 7.4.2).
func unescaped(b []byte) []byte {
	out, zeros := make([]byte, 0, len(b)), 0
	for _, c := range b {
		if zeros >= 2 && c == 3 {
			zeros = 0
			continue
		}
		if c == 0 {
			zeros++
		} else {
			zeros = 0
		}
		out = append(out, c)
	}
	return out
}

type bitReader struct {
	b  []byte
	at int // in bits
}

func (r *bitReader) ended() bool { return r.at > 8*len(r.b) }

func (r *bitReader) skip(n int) { r.at += n }

func (r *bitReader) bits(n int) uint64 {
	v := uint64(0)
	for range n {
		v <<= 1
		if r.at < 8*len(r.b) {
			v |= uint64(r.b[r.at/8]>>(7-r.at%8)) & 1
		}
		r.at++
	}
	return v
}

// golomb reads an unsigned Exp-Golomb number, ue(v).
func (r *bitReader) golomb() uint64 {
	zeros := 0
	for r.bits(1) == 0 {
		if zeros++; zeros > 32 || r.ended() {
			r.at = 8*len(r.b) + 1
			return 0
		}
	}
	return 1<<zeros - 1 + r.bits(zeros)
}
