package conversation

import (
	"strings"
	"testing"
	"time"

	"example.com/intake-bot/internal/fitcheck"
)

// TestPriceIsOfAllPiecesOnce: an estimate is of all pieces of its kind already.
func TestPriceIsOfAllPiecesOnce(t *testing.T) {
	shop := testShop(t)
	shop.ShowEstimate = true
	talk := Talk{Ref: "R7KQ4", Channel: SMS, Ledger: []Entry{
		{Topic: fitcheck.TopicCount, Unit: 1, Value: fitcheck.Whole(3), By: FromCustomer},
		{Topic: fitcheck.TopicCount, Unit: 2, Value: fitcheck.Whole(2), By: FromCustomer},
	}}
	turn, err := begin(talk, time.Now(), shop)
	if err != nil {
		t.Fatal(err)
	}
	turn.check.Units = []fitcheck.UnitResult{
		{Order: &fitcheck.Order{}, Estimate: &fitcheck.Estimate{Low: 700, High: 1100}},
		{Order: &fitcheck.Order{}, Estimate: &fitcheck.Estimate{Low: 500, High: 900}},
	}
	if got := turn.priceLine(); !strings.Contains(got, "$1,200 to $2,000") {
		t.Errorf("said %q", got)
	}
}
