package main

import (
	"wornfit/advisor/answer"
	"wornfit/rules/fault"
)

// find is the option meant by an id or a trade name. A name that cannot serve
// the fit at all has no option: then the name itself is returned.
func find(a *answer.Answer, word string) (*answer.Option, *answer.Method, error) {
	for i := range a.Options {
		if a.Options[i].ID == word {
			return &a.Options[i], nil, nil
		}
	}
	for i := range a.Methods {
		if m := &a.Methods[i]; m.Name == word {
			if m.Best == nil {
				return nil, m, nil
			}
			return find(a, *m.Best)
		}
	}
	var known []string
	for _, m := range a.Methods {
		known = append(known, m.Name)
	}
	known = append(known, a.IDs...)
	hint := fault.DidYouMean(word, known)
	if fault.Nearest(word, known) == "" && len(known) > 0 {
		hint = "give a name or an id as advise prints it, such as " + known[0]
	}
	return nil, nil, notUnderstood(hint, "there is no option %s for the fit %s", word, a.Case.Fit)
}

// none reports whether an answer has nothing to act on.
func none(a *answer.Answer) bool {
	if a.Stop != nil {
		return true
	}
	for i := range a.Options {
		if v := a.Options[i].Verdict; v == answer.Works || v == answer.WithCare {
			return false
		}
	}
	return true
}
