package render

import "wornfit/advisor/answer"

// Colours only repeat what a word says.
const (
	none   = ""
	bold   = "\x1b[1m"
	red    = "\x1b[31m"
	green  = "\x1b[32m"
	yellow = "\x1b[33m"
	blue   = "\x1b[36m"
	reset  = "\x1b[0m"
)

var styles = map[string]string{
	answer.Works: green, answer.WithCare: yellow, answer.CantTell: blue, answer.RuledOut: red,
	cautionMark: bold + red,
}

// styleOf is the style of a cell or mark that is one of the words above.
func styleOf(text string) string { return styles[text] }

func (p *Page) paint(style, text string) string {
	if !p.Colour || style == none || text == "" {
		return text
	}
	return style + text + reset
}
