package render

import "strings"

// sum writes a line of a formula. Where only plain characters may stand, powers
// and products are written out and letters named, so that it can still be read.
func (p *Page) sum(indent int, mark, line string) {
	if p.ASCII {
		line = spelledOut.Replace(line)
	}
	p.Item(indent, mark, line)
}

var spelledOut = strings.NewReplacer(
	"·", "*", "⋅", "*", "×", "*", "²", "^2", "³", "^3", "⁴", "^4", "⁻¹", "^-1", "√", "sqrt", "½", "0.5", "∞", "infinity",
	"µ", "mu", "μ", "mu", "π", "pi", "δ", "delta", "Δ", "Delta", "α", "alpha", "β", "beta", "ν", "nu", "θ", "theta", "Θ", "Theta", "σ", "sigma", "Σ", "Sigma",
	"τ", "tau", "φ", "phi", "Φ", "Phi", "ρ", "rho", "ω", "omega", "ε", "epsilon", "η", "eta", "λ", "lambda", "ψ", "psi", "∂", "d", "∫", "integral of ",
	"₁", "1", "₂", "2", "₅", "5", "≤", "<=", "≥", ">=", "−", "-")
