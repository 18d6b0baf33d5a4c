package catalogue

import (
	_ "embed"
	"encoding/json"
	"sync"
)

// Doc is what the documented function behind a kernel says of itself.
type Doc struct {
	Function string `json:"function"` // package and name
	Formula  string `json:"formula"`
	Holds    string `json:"holds"`
	Beyond   string `json:"beyond"`
	Source   string `json:"source"`
}

// toldText is taken out of the doc comments, so that there is one copy to keep
// true. A test holds it to them: go test ./calc/catalogue -run Told -update
//
//go:embed told.json
var toldText []byte

var told = sync.OnceValue(func() map[string]Doc {
	out := map[string]Doc{}
	if err := json.Unmarshal(toldText, &out); err != nil {
		panic(err) // the test would have told
	}
	return out
})

// Told is what is told of the calculation of a name; none where a kernel leans
// on no one documented function.
func Told(name string) (Doc, bool) {
	d, ok := told()[name]
	return d, ok
}
