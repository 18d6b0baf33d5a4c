package advisor_test

import (
	"fmt"
	"regexp"
	"strings"
	"testing"

	"wornfit/advisor/answer"
)

// dearHands is the lever eye with dear bench hours, nothing that must be kept,
// parts a day away, and a price for the pin.
func dearHands(t *testing.T, price string) string {
	data := shipped(t, "lever-eye")
	for _, s := range [][2]string{{`keep: yes`, "keep: no"}, {`stopped_cost: \S+ EUR/h`, "stopped_cost: 0 EUR/h"}, {`rate: \S+ EUR/h`, "rate: 300 EUR/h"},
		{`pin: \{price: [^}]*\}`, "pin: {price: " + price + ", days: 1 days}"}} {
		was := data
		if data = regexp.MustCompile(s[0]).ReplaceAllString(data, s[1]); data == was {
			t.Fatalf("the case has no %s", s[0])
		}
	}
	return data
}

// The price is told for the hub and for the shaft, and it is the very price at
// which the order turns: a little less and the bought part stands first, a little
// more and it does not.
func TestThePriceAtWhichBuyingWins(t *testing.T) {
	b := base(t)
	a := advise(t, b, dearHands(t, "38 EUR"))
	told := map[string]answer.Buying{}
	for _, x := range a.Buying {
		told[x.Part] = x
	}
	pin := told["shaft"]
	if len(a.Buying) != 2 || told["hub"].Text == "" || pin.Price == nil {
		t.Fatalf("told of buying: %+v; the hub and a price for the pin are wanted", a.Buying)
	}
	if pin.Now == nil || *pin.Now != 38 || !strings.Contains(pin.Text, a.Case.Shaft) {
		t.Errorf("the pin stands at 38 EUR: %+v", pin)
	}
	for _, c := range []struct {
		price  float64
		bought bool
	}{{*pin.Price - 5, true}, {*pin.Price + 5, false}} {
		first := advise(t, b, dearHands(t, fmt.Sprintf("%.2f EUR", c.price))).Options[0]
		if (first.Shaft == "buy") != c.bought {
			t.Errorf("at %.2f EUR %s stands first; buying wins at %.2f", c.price, first.ID, *pin.Price)
		}
	}
}

// What the case keeps is not bought, and the reason is told.
func TestWhatIsKeptIsNotBought(t *testing.T) {
	a := advise(t, base(t), shipped(t, "loose-hub"))
	if len(a.Buying) != 2 {
		t.Fatalf("told of buying: %+v", a.Buying)
	}
	for _, x := range a.Buying {
		if x.Price != nil || !strings.Contains(x.Text, "is kept") {
			t.Errorf("%s: %s", x.Part, x.Text)
		}
	}
}

// Where nothing without it comes near, no price is told: a million is none.
func TestABoughtPartThatWinsWhateverItCosts(t *testing.T) {
	a := advise(t, base(t), shipped(t, "hard-pin"))
	for _, x := range a.Buying {
		if x.Part == "shaft" {
			if x.Price != nil || !strings.Contains(x.Text, "whatever it costs") {
				t.Errorf("told of the pin: %+v", x)
			}
			return
		}
	}
	t.Errorf("nothing is told of buying the pin: %+v", a.Buying)
}
