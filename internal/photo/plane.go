package photo

// plane is one component of a picture.
type plane struct {
	pix    []uint8
	stride int
	w, h   int
}

func (p plane) row(y int) []uint8 { return p.pix[y*p.stride:][:p.w] }

// average fills to with the means of the parts of from that its pixels cover, each
// pixel of from counted by how much of it is covered, in 256ths.
func average(to, from plane) {
	if to.w == from.w && to.h == from.h {
		for y := range to.h {
			copy(to.row(y), from.row(y))
		}
		return
	}
	columns := spans(to.w, from.w)
	sums := make([]uint32, from.w)
	for y, s := range spans(to.h, from.h) {
		clear(sums)
		for i := s.first; i <= s.last; i++ {
			addRow(sums, from.row(i), s.weight(i))
		}
		averageRow(to.row(y), sums, columns, s.total)
	}
}

func addRow(sums []uint32, row []uint8, weight uint32) {
	sums = sums[:len(row)]
	for x, v := range row {
		sums[x] += weight * uint32(v)
	}
}

func averageRow(to []uint8, sums []uint32, columns []span, rows uint32) {
	for x, s := range columns {
		sum := uint64(sums[s.first]) * uint64(s.firstWeight)
		for _, v := range sums[s.first+1 : s.last+1] {
			sum += uint64(v) << 8
		}
		if s.last > s.first {
			sum -= uint64(sums[s.last]) * uint64(256-s.lastWeight)
		}
		total := uint64(s.total) * uint64(rows)
		to[x] = uint8((sum + total/2) / total)
	}
}

// span is the run of old pixels that a new one covers: the first and the last in part.
type span struct {
	first, last             int
	firstWeight, lastWeight uint32 // of 256
	total                   uint32
}

func (s span) weight(i int) uint32 {
	switch i {
	case s.first:
		return s.firstWeight
	case s.last:
		return s.lastWeight
	}
	return 256
}

// spans cuts from pixels into to equal parts.
func spans(to, from int) []span {
	all := make([]span, to)
	for i := range all {
		start, end := i*from*256/to, (i+1)*from*256/to
		s := span{first: start / 256, last: (end - 1) / 256}
		if end <= start { // fewer old pixels than new ones: the nearest
			s = span{first: min(start/256, from-1), last: min(start/256, from-1)}
			end = start + 1
		}
		s.firstWeight, s.lastWeight = uint32(256-start%256), uint32((end-1)%256+1)
		if s.first == s.last {
			s.firstWeight, s.lastWeight = 256, 256
		}
		s.total = s.firstWeight + s.lastWeight + 256*uint32(max(s.last-s.first-1, 0))
		if s.first == s.last {
			s.total = 256
		}
		all[i] = s
	}
	return all
}
