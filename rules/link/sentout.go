package link

import (
	"wornfit/rules/lang"
	"wornfit/rules/tape"
)

// Work done here or sent out: the built-in pick done_by. A pick of a machine
// takes a row of the shop when one surely fits, else also the rows of firms the
// case lists under sends_out. They are told apart by these columns.
const (
	SentOut   = "sent_out" // yes: a firm's
	theFirm   = "firm"     // 0: the shop
	firmsAsk  = "price"
	firmsTake = "days"
)

// away is what a step costs in money and waiting when a firm does it.
type away struct{ is, firm, price, days tape.Node }

// sent lists a pick's row as one that may be a firm's.
func (l *linker) sent(lw *lowering, e *env, pick string) away {
	at, ok := e.find(pick, isPick)
	if !ok {
		return away{}
	}
	p := &e.part.Picks[at]
	table, full := tableOf(p.From), e.full+pick
	if _, has := l.in.column(table, SentOut); !has {
		return away{}
	}
	var nodes [4]tape.Node
	for i, col := range []string{SentOut, theFirm, firmsAsk, firmsTake} {
		n, err := lw.slotOf(row{name: full, table: table, pick: full}, col)
		if err != nil {
			_ = l.tell(err, p.At)
			return away{}
		}
		nodes[i] = n
	}
	return away{nodes[0], nodes[1], nodes[2], nodes[3]}
}

// outside takes a step off the bench when a firm does it. The firm's price counts
// once a pick, on the first of its steps that is done; its days count for every
// trip: a step after one done here or by another firm.
func (l *linker) outside(lw *lowering, e *env, s *LinkedStep) {
	a := l.sent(lw, e, s.On)
	if a.is == 0 {
		return
	}
	none := lw.b.Const(0)
	s.SentNode = a.is
	if s.HoursNode != 0 {
		s.HoursNode = lw.b.Apply(lang.Cond, a.is, none, s.HoursNode)
	}
	s.FirmNode = lw.b.Apply(lang.Cond, a.is, a.price, none)
	done := s.WhenNode
	if done == 0 {
		done = lw.b.YesNo(true)
	}
	if paid, before := l.paid[s.OnPick]; before {
		s.FirmNode = lw.b.Apply(lang.Cond, paid, none, s.FirmNode)
		done = lw.b.Apply(lang.Or, paid, done)
	}
	l.paid[s.OnPick] = done
	s.AwayNode = lw.b.Apply(lang.Cond, a.is, a.days, none)
	s.firm = a.firm
	if at := l.away[whose(e)[0]]; at != 0 {
		there := lw.b.Apply(lang.Equal, at, a.firm)
		s.AwayNode = lw.b.Apply(lang.Cond, there, none, s.AwayNode)
	}
}

// whose lists the parts a step needs, 0 the shaft and 1 the hub: a treatment's
// and its joints' need its own, the finished fit's need both.
func whose(e *env) []int {
	if e.joint != nil && e.joint.owner != nil {
		e = e.joint.owner
	}
	switch e.part.Side {
	case Shaft:
		return []int{0}
	case Hub:
		return []int{1}
	}
	return []int{0, 1}
}

// leaves notes which firm has the parts after a step; 0: they are here.
func (l *linker) leaves(lw *lowering, e *env, s *LinkedStep) {
	now := lw.b.Const(0)
	if s.firm != 0 {
		now = lw.b.Apply(lang.Cond, s.SentNode, s.firm, now)
	}
	for _, part := range whose(e) {
		at := now
		if s.WhenNode != 0 && l.away[part] != 0 {
			at = lw.b.Apply(lang.Cond, s.WhenNode, now, l.away[part])
		}
		l.away[part] = at
	}
}

// orSent drops the rows of firms when a row of the shop surely fits.
func orSent(rows []RowValues, fit []candidate) (here, out []candidate) {
	sure := false
	for _, c := range fit {
		if k := rows[c.row].Columns[SentOut]; k.Is && k.Best == 1 {
			out = append(out, c)
			continue
		}
		here, sure = append(here, c), sure || !c.unsure
	}
	if sure {
		out = nil
	}
	return here, out
}
