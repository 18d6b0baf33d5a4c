package main

import (
	"fmt"

	"wornfit/advisor/answer"
	"wornfit/cmd/wornfit/render"
)

// page draws the answer to one fit.
type page func(render.Look, *answer.Answer) string

// several is the JSON of a case with several fits.
type several struct {
	Fits []*answer.Answer `json:"fits"`
}

// print writes the answers, as JSON or as pages one under the other.
func (f *flags) print(w world, list []*answer.Answer, draw page) error {
	if f.json {
		var v any = several{list}
		if len(list) == 1 {
			v = list[0]
		}
		return f.printJSON(w, v)
	}
	for i, a := range list {
		if i > 0 {
			fmt.Fprint(w.out, "\n\n")
		}
		if _, err := fmt.Fprint(w.out, draw(f.look(w), a)); err != nil {
			return err
		}
		if a.Stop != nil && a.Stop.Kind == "safety" {
			break // it holds for every fit of the case
		}
	}
	return nil
}

func (f *flags) printJSON(w world, v any) error {
	text, err := render.JSON(v, f.ascii)
	if err != nil {
		return err
	}
	_, err = w.out.Write(text)
	return err
}

// only keeps some of an answer's options, for JSON.
func only(a *answer.Answer, keep []*answer.Option) *answer.Answer {
	some := *a
	some.Options = nil
	for _, o := range keep {
		some.Options = append(some.Options, *o)
	}
	return &some
}
