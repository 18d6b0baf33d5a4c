// Package lang reads the expressions of the rule files. The language is
// expr's: expr's parser reads it, this package allows the forms a rule may
// use, checks units and words, and expr's compiler and VM are the referee.
//
// Start with Parse, then Check against a Scope. Lowering to a program that
// runs is package tape's. It knows no YAML and no part of an option.
package lang

import (
	"wornfit/calc/kernel"
	"wornfit/calc/quantity"
	"wornfit/rules/fault"
)

// Kind is what an expression stands for.
type Kind uint8

const (
	NumberKind Kind = iota // a quantity with a Dim
	YesNo
	Word      // one word of a closed list
	Row       // a row of a table: a material, a machine
	RangeKind // a number of a `numbers` table written as a range: only low(x), high(x) may use it
)

// Words is a closed list. A word's code is its index, so that one program can
// hold numbers, yes and no (1 and 0) and words alike.
type Words struct {
	Name string
	List []string
}

// Code returns the code of a word; ok is false when the list has no such word.
func (w *Words) Code(word string) (code float64, ok bool) {
	for i, s := range w.List {
		if s == word {
			return float64(i), true
		}
	}
	return 0, false
}

// Type is what the checker knows of an expression.
type Type struct {
	Kind  Kind
	Dim   quantity.Dim // of a NumberKind or RangeKind
	Words *Words       // of a Word
	Table string       // of a Row: the table it stands in
}

// Func is a calculation a rule may call: a kernel, or a lookup in a table of
// words. An argument of Kind Row passes the row's column named Column.
type Func struct {
	Kernel kernel.Kernel
	Args   []FuncArg
	Result Type
}

// FuncArg is the type of one argument of a Func.
type FuncArg struct {
	Type   Type
	Column string // of a Row argument: the column whose value is passed
}

// Scope is what the names in one file may mean.
type Scope interface {
	Name(dotted string) (Type, bool)
	Func(name string) (*Func, bool)
	Near() []string // every name known, for the nearest to a misspelt one
}

// Op is the form of a node.
type Op uint8

const (
	Const Op = iota // Value: a literal 0, 1, 2, 4, pi, a unit's factor, degC(40), a word's code, true or false
	Name            // Name: dotted
	Neg
	Add
	Sub
	Mul
	Div
	Pow // the exponent is a Const
	LessEq
	GreaterEq
	Less
	Greater
	Equal
	NotEqual
	And
	Or
	Not
	Cond // Args: test, then, else
	Min
	Max
	Abs
	Sqrt
	Low  // Args[0] is a Name of RangeKind
	High // Args[0] is a Name of RangeKind
	Call // Func, Args
)

// Expr is a node of a checked expression. `x in ["a", "b"]` is stored as Or of
// Equals; `a and not b` as And, Not; units as Const factors.
type Expr struct {
	Op    Op
	Value float64
	Name  string
	Func  *Func
	Args  []*Expr
	Type  Type
	At    fault.Place // of this node in its file, with Width
}

// Text is an expression as written, with the place of its first character and
// the dotted key it stands under.
type Text struct {
	Source string
	At     fault.Place
	Key    string
}
