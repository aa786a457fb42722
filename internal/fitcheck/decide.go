package fitcheck

// decision is what part to replace and why.
type decision struct {
	replace Replace
	reasons []string
	photos  []Topic // that would settle or confirm it
}

func staff(reason string, photos ...Topic) decision {
	return decision{ReplaceStaff, []string{reason}, photos}
}

// decide follows the trade's habits (common practice, no source). What stands on no
// curb, or is not plastic, comes first; then what the old frame allows; then what the
// customer wants.
func decide(u *Unit, job *Job, rules *Rules, sh *sheet) decision {
	if d, ok := outsideTrade(u, job); ok {
		return settledByStock(d, u, rules, sh)
	}
	return settledByStock(onCurb(u, sh), u, rules, sh)
}

// outsideTrade are the cases that a person decides whatever the sizes are.
func outsideTrade(u *Unit, job *Job) (decision, bool) {
	switch u.Style {
	case StyleNoneYet:
		return staff(ReasonNewOpening), true
	case StyleGlass, StyleTubular:
		return staff(ReasonOutsideOurParts), true
	case StyleSelfFlashing, StyleBareDome:
		return staff(ReasonNotCurbMounted, TopicStyle), true
	}
	// A vehicle has no curb, its hatch may be a way out, and road wind shakes it.
	if job.Use == UseRV {
		return staff(ReasonNotCurbMounted, TopicStyle), true
	}
	if u.Outline == OutlineOther {
		return staff(ReasonOutsideOurParts, TopicOutline), true
	}
	return decision{}, false
}

// onCurb decides between the dome alone and the whole unit. A style that was not told
// yet is taken for the usual one, a frame that caps a curb.
func onCurb(u *Unit, sh *sheet) decision {
	past := u.FrameCondition == ConditionBent || u.FrameCondition == ConditionCorroded
	hidden := u.FrameCondition == ConditionCaulkedOver || u.FrameCondition == ConditionUnsure
	wantsUnit := u.Want == WantCompleteUnit
	d := decision{replace: ReplaceUnit}
	switch u.Style {
	case StyleFiberglassFrame, StyleVerticalRise, StyleDomeOverFrame:
		// The plastic is glued to the frame, formed over it, or sits on a frame that
		// nobody makes any more: it can't be had by itself.
		d.reasons, d.photos = append(d.reasons, ReasonStyleNeedsUnit), []Topic{TopicStyle}
	case StyleUnsure:
		// A new unit goes on any curb, whatever stands there now.
		if !sh.complete(outside) || !past && !wantsUnit {
			return photoDecides(TopicStyle, hidden)
		}
	}
	if past {
		d.reasons = append(d.reasons, ReasonFramePastReuse)
	}
	if wantsUnit {
		d.reasons = append(d.reasons, ReasonCustomerPrefersUnit)
	}
	if d.reasons != nil {
		return d
	}
	return reuse(u, sh, hidden)
}

func photoDecides(of Topic, frameToo bool) decision {
	d := staff(ReasonPhotoDecides, of)
	if frameToo && of != TopicFrameCondition {
		d.photos = append(d.photos, TopicFrameCondition)
	}
	return d
}

// reuse: nothing speaks against the old frame so far.
func reuse(u *Unit, sh *sheet, hidden bool) decision {
	domeMeasured := sh.any(plastic) || sh.any(retainerIn) || sh.any(retainerOut) || sh.any(bulge)
	sound := u.FrameCondition == ConditionGood || u.FrameCondition == ConditionWeathered
	switch {
	case hidden:
		return photoDecides(TopicFrameCondition, false)
	case sound || u.Want == WantDomeOnly || domeMeasured:
		if u.Profile == ProfileOther { // a shape that can't be named can't be made unseen
			return staff(ReasonOutsideOurParts, TopicProfile)
		}
		return decision{replace: ReplaceDome, reasons: []string{ReasonReuseFrame}}
	case sh.any(outside) || sh.any(inside):
		// Only the curb was measured: take it for what they mean to cover until they say.
		return decision{replace: ReplaceUnit, reasons: []string{}}
	}
	return photoDecides(TopicStyle, false)
}

// settledByStock: an odd outline or a bare dome is no question where its sizes are
// those of a part on the shop's list.
func settledByStock(d decision, u *Unit, rules *Rules, sh *sheet) decision {
	odd := u.Style == StyleBareDome || u.Outline == OutlineOther && d.reasons[0] == ReasonOutsideOurParts
	if d.replace != ReplaceStaff || !odd {
		return d
	}
	if stockFor(ReplaceDome, u, sh, rules) != nil {
		return decision{replace: ReplaceDome, reasons: d.reasons, photos: d.photos}
	}
	return d
}

// photosWanted are the photos that would settle the decision, unless some came.
func photosWanted(u *Unit, d decision) []Topic {
	if u.Photos != nil && *u.Photos > 0 || d.photos == nil {
		return []Topic{}
	}
	return d.photos
}
