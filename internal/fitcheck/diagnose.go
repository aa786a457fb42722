package fitcheck

import "math"

// noneFits is the score that a guess must beat to be worth saying: worse, and the
// numbers contradict each other in a way that no known mistake explains.
const noneFits = 20

// standsOut is how much better than any other mistake one must be to be named alone: a
// likelihood ratio of about 6.
const standsOut = 3.5

// leastCost is the cheapest guess: numbers that agree better need no second look.
const leastCost = 4

// diagnosis is what best explains the numbers.
type diagnosis struct {
	best, rival guess
	found       bool // a mistake explains the numbers better than "nothing wrong"
	contested   bool // the rival explains them about as well
	tied        bool // the same mistake elsewhere explains them about as well
	eitherSide  bool // one side was written down twice, and nothing tells which of the two was lost
	clash       bool // nothing explains them
	plain       float64
	settle      []Topic
}

// diagnose weighs "nothing wrong" against every mistake.
func (sh *sheet) diagnose(rules *Rules) diagnosis {
	rel := soundRelations(rules)
	d := diagnosis{plain: sh.misfit(&rel)}
	if d.plain <= leastCost {
		return d
	}
	d.best.score, d.rival.score = math.MaxFloat64, math.MaxFloat64
	eachGuess(sh, func(g guess) {
		g.judge(sh, &rel)
		switch {
		case g.score < d.best.score:
			if g.code != d.best.code {
				d.rival = d.best
			}
			d.best = g
		case g.code != d.best.code && g.score < d.rival.score:
			d.rival = g
		}
	})
	d.found = d.best.score < min(d.plain, noneFits)
	d.contested = d.found && d.rival.score < min(d.best.score+standsOut, d.plain, noneFits)
	d.clash = !d.found && d.plain > noneFits
	if d.found {
		d.settle = sh.settles(&d, &rel)
	}
	return d
}

// settles are the topics that an about equally good guess suspects: measuring those
// again would tell.
func (sh *sheet) settles(d *diagnosis, rel *relations) []Topic {
	ts := []Topic{}
	add := func(g *guess) {
		for _, t := range g.topics(sh) {
			known := false
			for _, x := range ts {
				known = known || x == t
			}
			if !known {
				ts = append(ts, t)
			}
		}
	}
	add(&d.best)
	if d.best.spot == everywhere || d.best.spot == allSizes {
		return ts
	}
	eachGuess(sh, func(g guess) {
		g.judge(sh, rel)
		if g.spot < everywhere && (g.code == d.best.code || d.contested && g.code == d.rival.code) && g.score < min(d.best.score+standsOut, d.plain) {
			d.tied = d.tied || g.code == d.best.code && (g.spot != d.best.spot || g.side != d.best.side)
			d.eitherSide = d.eitherSide || g.kind == asCopied && d.best.kind == asCopied && g.spot == d.best.spot && g.side != d.best.side
			add(&g)
		}
	})
	return ts
}

// topics are those that a guess suspects.
func (g *guess) topics(sh *sheet) []Topic {
	switch {
	case g.spot < spots:
		return []Topic{g.spot.topic()}
	case g.spot == diagonals:
		return []Topic{TopicCurbDiagonals}
	}
	var ts []Topic
	for s := spot(0); s < spots; s++ {
		if sh.any(s) {
			ts = append(ts, s.topic())
		}
	}
	if g.spot == everywhere && sh.d[0] > 0 {
		ts = append(ts, TopicCurbDiagonals)
	}
	return ts
}
