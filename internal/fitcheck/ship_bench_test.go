package fitcheck

import "testing"

// What shipping, price and advice add to the check of a full unit.
func BenchmarkShipPriceAdvice(b *testing.B) {
	rules, r := priced(), unit(25.875, 49.875)
	u := with(chosen, 4)
	u.ImpactRisk = []string{RiskHail}
	job := Job{Use: UseHome, Place: Place{State: "TX"}, Site: at(29.76, -95.37)}
	b.ReportAllocs()
	for b.Loop() {
		advise(&u, &job, rules, r)
		shipOne(&u, &job, rules, r)
		estimate(&u, &job, rules, r)
	}
}
