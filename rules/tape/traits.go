package tape

import "wornfit/rules/lang"

// square is x*x, told apart from a product because it is never below 0.
const square = lang.Call + 1

// trait is what the builder and Formula must know of an op.
type trait struct {
	args     int    // how many it takes; chain ops take two or more
	chain    bool   // a op b op c is (a op b) op c
	commutes bool   // a op b is b op a, bit for bit
	yesNo    bool   // the result is a yes-no
	sign     string // as written; a word with rank 0 is written as a call
	rank     int    // binds tighter the higher
}

var traits = [...]trait{
	lang.Neg:       {args: 1, sign: "-", rank: 6},
	lang.Add:       {args: 2, chain: true, commutes: true, sign: "+", rank: 4},
	lang.Sub:       {args: 2, sign: "-", rank: 4},
	lang.Mul:       {args: 2, chain: true, commutes: true, sign: "*", rank: 5},
	lang.Div:       {args: 2, sign: "/", rank: 5},
	lang.Pow:       {args: 2, sign: "^", rank: 7},
	lang.LessEq:    {args: 2, yesNo: true, sign: "<=", rank: 3},
	lang.GreaterEq: {args: 2, yesNo: true, sign: ">=", rank: 3},
	lang.Less:      {args: 2, yesNo: true, sign: "<", rank: 3},
	lang.Greater:   {args: 2, yesNo: true, sign: ">", rank: 3},
	lang.Equal:     {args: 2, commutes: true, yesNo: true, sign: "==", rank: 3},
	lang.NotEqual:  {args: 2, commutes: true, yesNo: true, sign: "!=", rank: 3},
	lang.And:       {args: 2, chain: true, commutes: true, yesNo: true, sign: "and", rank: 2},
	lang.Or:        {args: 2, chain: true, commutes: true, yesNo: true, sign: "or", rank: 1},
	lang.Not:       {args: 1, yesNo: true, sign: "not"},
	lang.Cond:      {args: 3, sign: "?"},
	lang.Min:       {args: 2, chain: true, commutes: true, sign: "min"},
	lang.Max:       {args: 2, chain: true, commutes: true, sign: "max"},
	lang.Abs:       {args: 1, sign: "abs"},
	lang.Sqrt:      {args: 1, sign: "sqrt"},
	square:         {args: 1, sign: "^", rank: 7},
}
