// Package basis says how well a number is known and why a calculation refused.
// It knows no formula.
package basis

// Grade is how a number was come by, best first. A result carries the worst
// grade among the numbers that decide it.
type Grade uint8

const (
	Page         Grade = iota // read on the page of the source
	Derived                   // worked out, the working shown
	Secondary                 // read in a source that quotes the first
	Extrapolated              // a sound formula outside the range its source states
	Memory                    // from memory of the named source
	Practice                  // common practice, no source
)

var gradeWords = [...]string{"page", "derived", "secondary", "extrapolated", "memory", "practice"}

func (g Grade) String() string { return gradeWords[g] }

// Weak reports whether a number of this grade may decide nothing alone: it is
// tried again a stated way to either side.
func (g Grade) Weak() bool { return g >= Memory }

// Worse returns the weaker of two grades.
func Worse(a, b Grade) Grade { return max(a, b) }

// ReadGrade returns the grade a `seen:` word names.
func ReadGrade(word string) (Grade, bool) {
	for i, w := range gradeWords {
		if w == word {
			return Grade(i), true
		}
	}
	return 0, false
}

// Note goes with a result that stands but needs care: outside what the source
// states, or resting on a weak number.
type Note struct {
	Says, Source string
	Grade        Grade
}

// Refusal is the error of a calculation that can give no number.
type Refusal struct {
	Name  string // the argument blamed, in the words of the doc comment
	Value string // as given, with its unit
	Want  string // what would be right
}

func (r *Refusal) Error() string {
	return r.Name + " is " + r.Value + "; it must be " + r.Want
}
