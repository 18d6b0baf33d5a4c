package link

import (
	"sync"

	"wornfit/calc/quantity"
	"wornfit/rules/lang"
)

// asks keeps what inputs ask for, each once however many options ask it: they
// are most of what an option is.
type asks struct {
	sync.RWMutex
	of map[askKey]*Ask
}

// askKey tells inputs apart: two options may pick under one name from two tables.
type askKey struct {
	name, table string
	number      *Number
	dim         quantity.Dim
}

// Index makes room for what options share. It is called once, when the input is
// whole; without, each option has its own.
func (in *Input) Index() { in.asks = &asks{of: map[askKey]*Ask{}} }

// ask gives the one Ask like a, whose value is of type t.
func (in *Input) ask(a Ask, t lang.Type) *Ask {
	key := askKey{a.Name, a.Table, a.Number, t.Dim}
	if in.asks != nil {
		in.asks.RLock()
		one := in.asks.of[key]
		in.asks.RUnlock()
		if one != nil {
			return one
		}
	}
	one := new(Ask)
	*one = a
	one.Dim, one.YesNo = t.Dim, t.Kind == lang.YesNo
	if t.Words != nil {
		one.Words = t.Words.List
	}
	if in.asks != nil {
		in.asks.Lock()
		in.asks.of[key] = one
		in.asks.Unlock()
	}
	return one
}
