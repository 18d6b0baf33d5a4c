package judge

import (
	"fmt"
	"slices"

	"wornfit/advisor/answer"
	"wornfit/advisor/why"
	"wornfit/calc/quantity"
	"wornfit/rules/link"
)

func reasonsOf(told []answer.Option, id string) []answer.Reason {
	for i := range told {
		if told[i].ID == id {
			return told[i].Reasons
		}
	}
	return nil
}

// Buying finds, for the hub and for the shaft, the price of a bought one at
// which it would win over the best option that does not buy it.
func (b *Bench) Buying(list []*Judged, told []answer.Option) []answer.Buying {
	out := []answer.Buying{}
	for _, side := range []link.Side{link.Hub, link.Shaft} {
		if one := b.buying(side, list, told); one != nil {
			one.Part = side.String()
			out = append(out, *one)
		}
	}
	return out
}

// buys reports whether a combination buys the part of a side.
func buys(c link.Combination, side link.Side) bool {
	if side == link.Hub {
		return c.Hub.Bought
	}
	return c.Shaft.Bought
}

func (b *Bench) buying(side link.Side, list []*Judged, told []answer.Option) *answer.Buying {
	var repair, buy, refused *Judged
	for _, j := range list {
		bought := buys(j.Combination, side)
		if !j.Open() || j.Verdict == answer.CantTell {
			if bought && refused == nil {
				refused = j
			}
			continue
		}
		if bought && buy == nil {
			buy = j
		}
		if !bought && repair == nil {
			repair = j
		}
	}
	name := b.Called[side.String()]
	switch {
	case buy == nil && refused == nil:
		return nil
	case buy == nil:
		return &answer.Buying{Text: "Buying a new " + name + " is not among what works (" + refused.Combination.ID + "): " + why.Decides(reasonsOf(told, refused.Combination.ID)) + "."}
	case repair == nil:
		return &answer.Buying{Text: "Everything that is known to work wants a bought " + name + "."}
	}
	return b.wins(name, side.String()+".price", buy, repair)
}

// mostPrice is dearer than any part: past it the price decides nothing.
const mostPrice = 1e6

// wins looks for the price at which the bought part's option passes the repair's.
func (b *Bench) wins(name, price string, buy, repair *Judged) *answer.Buying {
	slot, ok := buy.Option.Slot(price)
	if !ok {
		return nil
	}
	points := func(price float64) float64 {
		reg := slices.Clone(buy.Found.Reg)
		reg[slot.Node] = price
		buy.Option.Program.Run(reg)
		found := buy.Found
		found.Reg = reg
		m := *buy
		m.Found = found
		return b.mark(&m)
	}
	out := &answer.Buying{}
	if k, ok := b.Given.Value(price); ok && k.Says == "stated" {
		v := k.Best
		out.Now = &v
	}
	lo, hi := 0.0, mostPrice
	if points(lo) < repair.Mark.Points {
		out.Text = fmt.Sprintf("A bought %s would not win at any price: it stands at %.0f points as a gift, against %.0f.", name, points(lo), repair.Mark.Points)
		return out
	}
	if points(hi) >= repair.Mark.Points {
		out.Text = fmt.Sprintf("A bought %s wins whatever it costs: the best without one stands at %.0f points.", name, repair.Mark.Points)
		return out
	}
	for range 60 {
		mid := lo + (hi-lo)/2
		if points(mid) >= repair.Mark.Points {
			lo = mid
		} else {
			hi = mid
		}
	}
	p := lo
	out.Price = &p
	out.Text = fmt.Sprintf("A bought %s wins at %s or less", name, b.Speech.Say(p, quantity.MoneyDim))
	if out.Now != nil {
		out.Text += "; it stands at " + b.Speech.Say(*out.Now, quantity.MoneyDim)
	}
	out.Text += "."
	return out
}
