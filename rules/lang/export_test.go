package lang

// For the tests that stand outside the package because they use tape.
var (
	Bench           = bench
	GoodExpressions = goodExpressions
	TextOf          = text
)
