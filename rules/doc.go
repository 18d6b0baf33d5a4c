// Package rules reads the rule base: the vocabulary, the tables, the part
// files, the criteria. It checks them and hands them on as data. It knows no
// treatment, no material and no machine by name.
//
// Start with Load. What a file may hold is told below; how expressions are
// read and checked stands in package lang, how parts become an option in
// package link.
//
// # Layers
//
// A rule base is one or more folders, the later laid over the earlier:
//
//	seam.yaml                    what may cross between part files
//	criteria.yaml                how options are scored: curves and weights
//	options.yaml                 trade names over options
//	sources.yaml                 what each source key stands for
//	steps.yaml                   steps every repair has
//	vocabulary/*.yaml            the names a rule may use, and the columns of tables
//	shaft/ hub/ hold/ purpose/   part files; the file's name is its id
//	materials/ machines/ gauges/ pairings/ cautions/   table rows; the file's name is its id
//	tests/                       rule tests, not loaded into the program
//
// # Vocabulary
//
//   - name: hub.outside              # dotted, snake_case; fixed for good
//     says: outside diameter of the hub where it limits the wall
//     role: given                    # given | reading | shop | wish
//     quantity: length               # a kind of package quantity | word | yes-no | row
//     range: 3 mm to 2 m
//     words: {none: steady, heavy: hammering}    # quantity: word
//     table: materials                           # quantity: row
//     unknown: whole range           # or a stated usual value: {value: 20 degC, from: ..., seen: ...}
//     changeable: no                 # or yes, or at a cost in words
//     ask: What does the hub measure outside, across its thinnest place?
//     with: caliper
//     example: 44.5 mm
//
// vocabulary/tables.yaml lists, for each table, its columns in the same form.
// Rows given by the case (datums, machines) are tables too.
//
// # Part files
//
//	schema: part/1                   # part/1 | hold/1 | purpose/1
//	id: bush
//	side: hub                        # part/1 only: shaft | hub
//	says: bored out and bushed
//	metal: more                      # kept | less | more
//	finishes: bush_bore
//	numbers:
//	  least_wall:   {value: 1.6 mm, from: common practice, no source, seen: practice, doubt: 1 mm to 2 mm}
//	  left_to_bore: {value: 0.2 mm to 0.4 mm, from: ..., seen: practice}   # a range: low(x), high(x)
//	needs:
//	  - {id: bush-wants-borer, must: 'hub.comes_off', ground: shop, why: ..., remedy: ..., from: ...}
//	pick:
//	  bush_material: {from: materials, where: 'it.bush', all: yes}
//	  borer: {from: shop.machines, where: 'it.bores', best: {least: 'it.tolerance'}, why: ..., remedy: ...}
//	choose:                          # in cutting order
//	  hub_bore:  {says: hub bore, part: hub, by: borer, gauged: inside, range: 'hub.smallest .. hub.outside'}
//	  bush_outside: {says: bush outside, part: bush, by: turner, gauged: outside, range: '...', suits: hub_bore}
//	joints: {bush: {inner_size: 'bush_outside', ...}}
//	define:
//	  wall: {is: '(bush_outside - bush_bore)/2', says: wall of the bush}
//	  bore_face: {row: bush_material}
//	limits:                          # exactly one <= or >= between numbers
//	  - {id: bush-wall-least, should: 'wall >= least_wall', when: '...', ground: practice, why: 'the wall comes to {wall}', remedy: ..., from: ...}
//	aim: [{least: 'hub_bore'}]
//	scores:
//	  - {id: bush-spoil, criterion: risk, is: 'spoil_share', says: a bore cut over size cannot be put back}
//	features: {keyway: {answer: ruled out, why: ...}, oil-hole: {answer: restore, why: ...}}
//	steps:
//	  - {id: bore-hub, says: bore the hub, hours: 'set_up + cut', on: borer, gives: [hub_bore], cautions: [C17]}
//	  - {common: strip-and-clean}    # from steps.yaml
//	mistakes: [{says: ..., instead: ...}]
//	cautions: [C14]
//
// Expressions hold no numbers but 0, 1, 2, 4 and pi. A misspelt name, a wrong
// unit, an unknown word or a missing source is a fault with its place.
package rules
