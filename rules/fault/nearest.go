package fault

// Nearest returns the word of the list that a misspelt one most likely meant,
// or "" when none is near: at most a third of its letters changed, and never
// more than three.
func Nearest(word string, list []string) string {
	best, bestAt := "", min(3, (len([]rune(word))+2)/3)+1
	for _, w := range list {
		if d := distance([]rune(word), []rune(w)); d < bestAt {
			best, bestAt = w, d
		}
	}
	return best
}

// DidYouMean returns a remedy that names the nearest word, or lists the words.
func DidYouMean(word string, list []string) string {
	if near := Nearest(word, list); near != "" {
		return "did you mean " + near + "?"
	}
	return "known here: " + join(list)
}

func join(list []string) string {
	s := ""
	for i, w := range list {
		if i == 20 {
			return s + ", ..."
		}
		if i > 0 {
			s += ", "
		}
		s += w
	}
	return s
}

// distance counts the letters to add, drop, change or swap with the next.
func distance(a, b []rune) int {
	before, last, row := make([]int, len(b)+1), make([]int, len(b)+1), make([]int, len(b)+1)
	for j := range last {
		last[j] = j
	}
	for i := 1; i <= len(a); i++ {
		row[0] = i
		for j := 1; j <= len(b); j++ {
			cost := 1
			if a[i-1] == b[j-1] {
				cost = 0
			}
			row[j] = min(last[j]+1, row[j-1]+1, last[j-1]+cost)
			if i > 1 && j > 1 && a[i-1] == b[j-2] && a[i-2] == b[j-1] {
				row[j] = min(row[j], before[j-2]+1)
			}
		}
		before, last, row = last, row, before
	}
	return last[len(b)]
}
