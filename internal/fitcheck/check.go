package fitcheck

import "math"

// Check looks at all units of a job. It is pure, and total: any job has an answer.
func Check(job Job, rules *Rules) Result {
	res := Result{Units: make([]UnitResult, len(job.Units)), Cautions: []string{}}
	for i := range job.Units {
		res.Units[i] = checkUnit(&job.Units[i], &job, rules)
	}
	crossCheck(&job, res.Units)
	res.Cautions = cautions(&job, res.Units)
	return res
}

func checkUnit(u *Unit, job *Job, rules *Rules) UnitResult {
	sh := readSheet(u, job, rules)
	d := decide(u, job, rules, &sh)
	r := UnitResult{Replace: d.replace, Reasons: d.reasons, PhotosWanted: photosWanted(u, d)}
	n := needOf(u, &d, &sh)
	slip := sh.diagnose(rules)
	work := slip.meant(&sh)
	j := judged{u, &sh, work, &slip, n, rules}
	r.Findings = j.lines(append(make([]Finding, 0, 4), slip.explain(&sh)...))
	r.Order = order(u, n, &sh, rules)
	r.Findings = sizeLines(r.Findings, j.limits(r.Order), n, rules)
	r.Findings = codeFlags(r.Findings, u, job, work)
	r.Findings = useAgainstSize(r.Findings, u, job, work)
	otherPart(r.Findings, d.replace, n, &sh)
	r.Missing, r.CheckedBy = missing(u, n, &sh), checkedBy(u, n, &sh)
	r.Verdict = verdict(n, &sh, r.Findings)
	withholdOrder(&r)
	r.Ship = shipOne(u, job, rules, &r)
	r.Findings = append(r.Findings, advise(u, job, rules, &r)...)
	r.Estimate = estimate(u, job, rules, &r)
	tidy(r.Findings)
	return r
}

// tidy rounds the findings' numbers to what a nanometre of reading leaves of them.
func tidy(fs []Finding) {
	for i := range fs {
		for k, x := range fs[i].Numbers {
			fs[i].Numbers[k] = math.Round(x*1e6) / 1e6
		}
	}
}

// withholdOrder keeps a size out of the answer where ordering it would be wrong.
func withholdOrder(r *UnitResult) {
	wrong := r.Verdict == VerdictNoFit || r.Verdict == VerdictRemeasure
	for i := range r.Findings {
		wrong = wrong || r.Findings[i].otherUnit() && r.Findings[i].Severity != Note
	}
	if wrong {
		*r.Order = Order{}
	}
}
