package main

import (
	"math"

	"wornfit/calc/catalogue"
	"wornfit/calc/kernel"
	"wornfit/calc/quantity"
	"wornfit/cmd/wornfit/render"
)

// The JSON of the formula command. Names are the calculation's own, snake_case,
// as the rule language spells them; values are SI.

type topicJSON struct {
	Topic    string  `json:"topic"`
	Formulas []brief `json:"formulas"`
}

type brief struct {
	Name string `json:"name"`
	Says string `json:"says"`
}

func listedJSON(list []catalogue.Topic) []topicJSON {
	var out []topicJSON
	for _, t := range list {
		one := topicJSON{Topic: t.Name}
		for _, k := range t.Kernels {
			one.Formulas = append(one.Formulas, brief{k.Name, k.Says})
		}
		out = append(out, one)
	}
	return out
}

// unitJSON is the unit a value is in, SI.
func unitJSON(kind string, d quantity.Dim) string {
	if kind == "angle" {
		return "rad"
	}
	return kernel.SIUnit(d)
}

type formulaJSON struct {
	Name      string         `json:"name"`
	Topic     string         `json:"topic"`
	Says      string         `json:"says"`
	Kind      string         `json:"kind"` // of the result
	Unit      string         `json:"unit"`
	Arguments []argumentJSON `json:"arguments"`
	Formula   string         `json:"formula"`
	Holds     string         `json:"holds"`
	Beyond    string         `json:"beyond"`
	Source    string         `json:"source"`
	Grade     string         `json:"grade"`
	Example   []string       `json:"example"`
}

type argumentJSON struct {
	Name  string  `json:"name"`
	Says  string  `json:"says"`
	Kind  string  `json:"kind"`
	Unit  string  `json:"unit"`
	Low   float64 `json:"low"`
	High  float64 `json:"high"`
	Trend int     `json:"trend"` // 1: the result never falls as this grows; -1: never rises; 0: no promise
}

func shownJSON(f render.Formula) formulaJSON {
	k := f.Kernel
	out := formulaJSON{Name: k.Name, Topic: f.Topic, Says: k.Says, Kind: render.ResultKind(k), Unit: unitJSON(render.ResultKind(k), k.Result),
		Formula: f.Told.Formula, Holds: f.Told.Holds, Beyond: f.Told.Beyond, Source: k.Source, Grade: k.Grade.String(), Example: f.Example}
	for _, a := range k.Args {
		out.Arguments = append(out.Arguments, argumentJSON{a.Name, a.Says, render.ArgKind(a), unitJSON(render.ArgKind(a), a.Dim), a.Range.Lo, a.Range.Hi, int(a.Trend)})
	}
	return out
}

type runJSON struct {
	Name      string                `json:"name"`
	Topic     string                `json:"topic"`
	Says      string                `json:"says"`
	Results   map[string]resultJSON `json:"results"`
	Arguments []putJSON             `json:"arguments"`
	Steps     []string              `json:"steps"`
	Notes     []noteJSON            `json:"notes"`
	Holds     string                `json:"holds"`
	Beyond    string                `json:"beyond"`
	Source    string                `json:"source"`
	Grade     string                `json:"grade"` // the worst of formula, notes and numbers taken from a metal
}

type resultJSON struct {
	Value  float64 `json:"value"`
	Unit   string  `json:"unit"`
	Spoken string  `json:"spoken"`
}

type putJSON struct {
	Name   string  `json:"name"`
	Value  float64 `json:"value"`
	Unit   string  `json:"unit"`
	Spoken string  `json:"spoken"`
	Typed  string  `json:"typed"` // "" when a metal gave it
	Metal  string  `json:"metal"`
	Low    float64 `json:"low"` // a metal's number as its table has it, from and to
	High   float64 `json:"high"`
	Source string  `json:"source"`
	Grade  string  `json:"grade"`
}

type noteJSON struct {
	Says   string `json:"says"`
	Source string `json:"source"`
	Grade  string `json:"grade"`
}

// ranJSON is what was worked; of a family the first is told, and the results of all.
func ranJSON(all []render.Ran, v render.Voice) runJSON {
	r := all[0]
	out := runJSON{Name: r.Kernel.Name, Topic: r.Topic, Says: r.Kernel.Says, Steps: r.Steps, Holds: r.Told.Holds, Beyond: r.Told.Beyond, Source: r.Kernel.Source, Grade: r.Grade.String(),
		Results: map[string]resultJSON{}}
	for _, one := range all {
		k := one.Kernel
		out.Results[k.Name] = resultJSON{one.Result, unitJSON(render.ResultKind(k), k.Result), v.Said(one.Result, render.ResultKind(k), k.Result)}
	}
	for _, p := range r.Puts {
		one := putJSON{Name: p.Arg.Name, Value: p.Value, Unit: unitJSON(render.ArgKind(p.Arg), p.Arg.Dim), Spoken: v.SaidArg(p.Value, p.Arg), Typed: p.Typed,
			Metal: p.Metal, Low: math.NaN(), High: math.NaN()}
		if p.Metal != "" {
			one.Low, one.High, one.Source, one.Grade = p.Low, p.High, p.From, p.Grade.String()
		}
		out.Arguments = append(out.Arguments, one)
	}
	for _, n := range r.Notes {
		out.Notes = append(out.Notes, noteJSON{n.Says, n.Source, n.Grade.String()})
	}
	return out
}
