package reading

import "example.com/intake-bot/internal/fitcheck"

// Of which part of the skylight a size is.

// sizeTopic finds what a measure is of from the part and the face that were named.
// Where the words leave it open it gives the candidates.
func sizeTopic(part, face string) (fitcheck.Topic, []fitcheck.Topic) {
	switch part {
	case "curb":
		switch face {
		case "outside":
			return fitcheck.TopicCurbOutside, nil
		case "inside", "clear":
			return fitcheck.TopicCurbInside, nil
		}
		return "", curbSizes
	case "retainer":
		switch face {
		case "outside", "edge", "overall":
			return fitcheck.TopicRetainerOutside, nil
		case "inside", "clear":
			return fitcheck.TopicRetainerOpening, nil
		}
		return "", retainerSizes
	case "frame", "flange":
		if face == "inside" {
			return fitcheck.TopicFrameInside, nil
		}
		if part == "flange" {
			return "", flangeSizes
		}
		if face == "outside" {
			return "", outsideSizes
		}
		return "", frameSizes
	case "plastic":
		if face == "inside" {
			return "", domeSizes
		}
		return fitcheck.TopicPlasticSize, nil
	case "dome":
		if face == "edge" || face == "outside" || face == "overall" {
			return fitcheck.TopicPlasticSize, nil
		}
		return "", domeSizes
	case "bulge":
		return fitcheck.TopicBulgeBase, nil
	case "opening":
		return "", openings
	}
	return sizeByFace(face)
}

func sizeByFace(face string) (fitcheck.Topic, []fitcheck.Topic) {
	switch face {
	case "outside":
		return "", outsideSizes
	case "inside", "clear":
		return "", insideSizes
	case "edge":
		return fitcheck.TopicPlasticSize, nil
	}
	return "", nil
}

// topicOf decides what a measure is of; what was asked settles what its own words
// leave open.
func (r *reader) topicOf(m *measure) (fitcheck.Topic, []fitcheck.Topic) {
	if m.diag || m.shape == diagonals {
		return fitcheck.TopicCurbDiagonals, nil
	}
	if len(m.parts) == 1 && m.parts[0].side == height {
		return r.heightTopic(m)
	}
	if r.faceForgotten(m) {
		return "", curbSizes
	}
	if h := r.labelFrom(m.last + 1); h != nil && h.is("part", "curb") && m.shape == lone && m.face == "" && m.topic == "" &&
		!m.square && m.parts[0].side == noSide && m.parts[0].unit == inch && m.parts[0].length() <= fitcheck.Foot {
		return fitcheck.TopicCurbHeight, nil // "curb OD 50.5 x 98.5, 8 inch curb"
	}
	if m.either && m.topic == "" {
		return "", r.Asked
	}
	if named, _ := sizeTopic(m.part, m.face); (m.topic == fitcheck.TopicFrameInside ||
		m.topic == "" && named == fitcheck.TopicFrameInside) &&
		r.asked(fitcheck.TopicRetainerOpening) && !r.asked(fitcheck.TopicFrameInside) && r.onlyFrame(m) {
		return fitcheck.TopicRetainerOpening, nil
	}
	if m.topic != "" {
		return m.topic, nil
	}
	if r.asked(fitcheck.TopicDomeRise) && len(m.parts) == 1 && m.shape == lone &&
		(m.parts[0].side == noSide || m.parts[0].side == someSide) && (m.part == "bulge" || m.part == "dome") {
		return fitcheck.TopicDomeRise, nil // "five and a half at the top of the bubble"
	}
	if m.part == "opening" && m.face == "" && partOf(r.askedSize()) == "curb" &&
		r.wordsIn(r.sentenceFirst(m.first), m.first, "inside", "indoors", "adentro") {
		return fitcheck.TopicCurbInside, nil
	}
	if from, to := r.sentence(m.first); m.face == "edge" && m.part == "" && r.asked(fitcheck.TopicFrameInside) &&
		r.wordsIn(from, to+1, "underside", "underneath", "upside", "flipped") {
		return fitcheck.TopicFrameInside, nil // "measured from the underside lip to lip"
	}
	topic, candidates := sizeTopic(m.part, m.face)
	if m.face == "edge" && m.part == "" && partOf(r.askedSize()) == "curb" {
		topic = "" // "end to end" of the curb that was asked about
	}
	if topic != "" {
		return topic, nil
	}
	face := m.face
	if face == "overall" { // says nothing where it is asked of what
		face = ""
	}
	if m.part == "" && m.face == "" && r.asked(fitcheck.TopicPlasticSize) && r.notMeasured("plastic") {
		return "", []fitcheck.Topic{fitcheck.TopicCurbOutside, fitcheck.TopicCurbInside, fitcheck.TopicRetainerOpening}
	}
	for _, a := range r.Asked {
		if !a.OfLength() ||
			(a == fitcheck.TopicCurbHeight || a == fitcheck.TopicDomeRise) && len(m.parts) == 1 &&
				(m.parts[0].side == width || m.parts[0].side == length) {
			continue // "meant 25 3/4 wide" is no height
		}
		if p := partOf(a); m.part == "" && (p == "curb" || p == "retainer") {
			if t, _ := sizeTopic(p, m.face); t != "" && m.face != "edge" {
				return t, nil
			}
		}
		if m.part == "frame" && m.face == "" && partOf(a) == "curb" {
			continue // "the frame" alone does not say which
		}
		if m.part == "" && face == "" || m.part == "skylight" && face == "" ||
			contains(candidates, a) || m.face == "" && partOf(a) == m.part {
			return a, nil
		}
	}
	if m.face == "outside" && m.part == "" && r.asked(fitcheck.TopicPlasticSize) {
		candidates = append([]fitcheck.Topic{fitcheck.TopicPlasticSize}, candidates...) // it has an outside edge too
	}
	return "", candidates
}

func contains(list []fitcheck.Topic, t fitcheck.Topic) bool {
	for _, l := range list {
		if l == t {
			return true
		}
	}
	return false
}

// heightTopic tells the curb's height from the bulge's.
func (r *reader) heightTopic(m *measure) (fitcheck.Topic, []fitcheck.Topic) {
	if m.topic == fitcheck.TopicCurbHeight || m.topic == fitcheck.TopicDomeRise {
		return m.topic, nil
	}
	part := m.part
	if part == "" {
		part = partOf(m.topic)
	}
	switch part {
	case "curb":
		return fitcheck.TopicCurbHeight, nil
	case "dome", "bulge", "plastic":
		return fitcheck.TopicDomeRise, nil
	}
	for n := range r.choices {
		if r.choices[n].has1("profile") && len(r.Asked) == 0 && !r.choices[n].is("profile", "?") && !r.choices[n].senses[0].asked {
			return fitcheck.TopicDomeRise, nil // "a pyramid, 18 inches tall"
		}
	}
	for _, a := range r.Asked {
		switch a {
		case fitcheck.TopicCurbHeight, fitcheck.TopicDomeRise:
			return a, nil
		case fitcheck.TopicCurbOutside, fitcheck.TopicCurbInside:
			return fitcheck.TopicCurbHeight, nil
		case fitcheck.TopicPlasticSize, fitcheck.TopicBulgeBase:
			return fitcheck.TopicDomeRise, nil
		}
	}
	return "", []fitcheck.Topic{fitcheck.TopicCurbHeight, fitcheck.TopicDomeRise}
}
