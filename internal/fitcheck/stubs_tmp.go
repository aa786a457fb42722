package fitcheck

func diagnose(sh *sheet, rules *Rules) []Finding                          { return nil }
func lines(fs []Finding, u *Unit, sh *sheet, rules *Rules) []Finding      { return fs }
func sizeLines(fs []Finding, o *Order, n need, rules *Rules) []Finding    { return fs }
func codeFlags(fs []Finding, u *Unit, job *Job, sh *sheet) []Finding      { return fs }
func useAgainstSize(fs []Finding, u *Unit, job *Job, sh *sheet) []Finding { return fs }
func crossCheck(job *Job, rs []UnitResult)                                {}
func cautions(job *Job, rs []UnitResult) []string {
	if len(rs) == 0 {
		return []string{}
	}
	return []string{CautionRoofFall}
}
