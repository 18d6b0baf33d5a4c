package lang

import (
	"testing"

	"github.com/expr-lang/expr"
)

// BenchmarkRead is one good expression parsed and checked; BenchmarkCompile the
// same with expr's compiler, which rules are not loaded by.
func BenchmarkRead(b *testing.B) {
	scope := bench()
	b.ReportAllocs()
	for i := 0; b.Loop(); i++ {
		s, _ := Parse(text(goodExpressions[i%len(goodExpressions)]))
		if _, faults := s.Infer(scope); len(faults) > 0 {
			b.Fatal(faults)
		}
	}
}

func BenchmarkCompile(b *testing.B) {
	b.ReportAllocs()
	for i := 0; b.Loop(); i++ {
		if _, err := expr.Compile(goodExpressions[i%len(goodExpressions)]); err != nil {
			b.Fatal(err)
		}
	}
}
