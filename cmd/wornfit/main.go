// Command wornfit answers what can be done about a worn round fit: it judges
// every way to repair it, ranks them and sizes the best.
//
// Start with run.go: it lists the commands. Each has a file of its own; ask.go
// is the only one that calls the advisor; how things look is package render's.
package main

import (
	"os"
	"runtime/debug"
)

func main() {
	if os.Getenv("GOGC") == "" {
		// one short run: no collecting until the heap nears what a small machine can spare
		debug.SetGCPercent(-1)
		debug.SetMemoryLimit(50 << 20)
	}
	os.Exit(run(os.Args[1:], terminal()))
}
