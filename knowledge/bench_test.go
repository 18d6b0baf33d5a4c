package knowledge_test

import (
	"testing"

	"wornfit/knowledge"
)

// The shipped rule base as the program loads it, from its packed files; package
// rules times the same parsed from the files themselves.
func BenchmarkLoad(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		if _, faults := knowledge.Load(); len(faults) > 0 {
			b.Fatal(faults)
		}
	}
}
