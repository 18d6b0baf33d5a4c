// Package rules reads the rule base: the vocabulary, the tables, the part
// files, the criteria. It checks them and hands them on as data. It knows no
// treatment, no material and no machine by name.
//
// Start with Load; Check is Load with all that `knowledge check` tells besides.
// What a file may hold is told below; how expressions are read and checked
// stands in package lang, how parts become an option in package link.
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
//	pairings/                    which faces may rub on which: the lookup pair(a, b)
//	materials/ machines/ ...     table rows, one folder for each table of vocabulary/tables.yaml; the file's name is its id
//	tests/                       rule tests, not loaded into the program
//	overrides.yaml               in a later layer: what changes in the layers below
//
// A later layer adds files of new ids, and adds to options.yaml (tried after
// those below), sources.yaml, steps.yaml, vocabulary/tables.yaml and pairings/.
// What stands already it changes in overrides.yaml alone:
//
//	hub/bush.least_wall: {value: 2 mm, from: our shop standard 7}      # a number from memory or practice
//	machines/lathe.tolerance: {value: 12 um, doubt: 10 um to 15 um, from: our trial, seen: derived}
//	bush-wall-least: {becomes: must, from: our shop standard 7}        # a should; never the reverse
//
// Numbers read in a source stand, and safety is never touched.
//
// # Words, ids, numbers
//
// An id or word is refused that YAML or the rule language may read as anything
// but text: yes, off, null, 010, 2024-01-02, not. A private name is snake_case
// and no word of expr (map, count, now).
//
// Every number says where it is from and how it was come by:
//
//	{value: 1.6 mm, doubt: 1 mm to 2 mm, from: KEY, seen: practice}
//
// from is a key of sources.yaml, or two joined by `and`, with a place after a
// comma (`iso286, table 2`), or `from memory of KEY`, or `common practice, no
// source`. seen is page, derived, secondary, memory or practice, and never
// better than how the source itself is known. A weak number (memory, practice)
// is tried again over its doubt; without one, a fifth to either side. A number
// without a unit is a plain number; a remark stands on a line of its own, since a
// unit behind # would be lost.
//
// # Vocabulary
//
//	# vocabulary/hub.yaml
//	- name: hub.outside              # dotted, snake_case; fixed for good
//	  says: outside diameter of the hub where it limits the wall
//	  role: given                    # given | reading | shop | wish
//	  quantity: length               # a kind of package quantity | word | yes-no | row
//	  range: 3 mm to 2 m
//	  words: {none: steady, heavy: hammering}    # quantity: word
//	  table: materials                           # quantity: row
//	  unknown: whole range           # every word, every row; or a usual value: {value: 20 degC, from: ..., seen: ...}
//	  changeable: no                 # or yes, or at a cost in words
//	  ask: What does the hub measure outside, across its thinnest place?
//	  with: caliper
//	  example: 44.5 mm
//
// words: may name another entry whose list it takes. vocabulary/tables.yaml
// lists, for each table, its columns in the same form, and quantity: text for
// what is only printed. vocabulary/near.yaml lists the kinds of neighbour that
// every treatment answers. Rows given by the case (datums, machines) are tables
// too.
//
// # Part files
//
//	schema: part/1                   # part/1 | hold/1 | purpose/1
//	id: bush                         # ids of its rules, picks, scores and steps begin with it
//	side: hub                        # part/1 only: shaft | hub
//	says: bored out and bushed
//	metal: more                      # part/1 only: kept | less | more
//	finishes: bush_bore              # part/1 only; left out when nothing is cut
//	bought: yes                      # part/1 only: the part is bought new; the answer tells the price at which that wins
//	fit_only: yes                    # hold/1 only: for the finished fit, never a bush or sleeve
//	holds: none                      # purpose/1 only: fit when the finished fit is held, none when it runs
//	numbers:
//	  least_wall:   {value: 1.6 mm, from: practice, seen: practice, doubt: 1 mm to 2 mm}
//	  left_to_bore: {value: 0.2 mm to 0.4 mm, from: ..., seen: practice}   # a range: low(x), high(x)
//	needs:                           # facts, settled before any size is known
//	  - {id: bush-wants-borer, must: 'hub.comes_off', ground: shop, why: ..., remedy: ..., from: ...}
//	pick:                            # source: where its rule is from, since from is the table
//	  bush_material: {from: materials, where: 'it.bush', all: yes, id: bush-material, ground: shop, why: ..., remedy: ...}
//	  borer: {from: shop.machines, where: 'it.bores', best: {least: 'it.tolerance'}, id: bush-borer, ground: shop, why: ..., remedy: ...}
//	  class: {from: clearances, where: '...', best: {first: row}, id: ..., ground: ..., why: ..., remedy: ...}
//	choose:                          # in cutting order
//	  hub_bore:  {says: hub bore, part: hub, by: borer, gauged: inside, range: 'hub.smallest .. hub.outside'}
//	  bush_outside: {says: bush outside, part: bush, by: turner, gauged: outside, range: '...', suits: hub_bore}
//	  bush_bore: {says: bush bore, part: bush, by: borer, gauged: inside, range: '...', suits: mate}
//	joints: {bush: {inner_size: 'bush_outside', ..., inner_material: bush_material, holds: [press, compound]}}
//	define:
//	  wall: {is: '(bush_outside - bush_bore)/2', says: wall of the bush, tell: yes}   # tell: on the best option's page
//	  bore_face: {row: bush_material}
//	limits:                          # exactly one <= or >= between numbers
//	  - {id: bush-wall-least, should: 'wall >= least_wall', when: '...', ground: practice, why: 'the wall comes to {wall}', remedy: ..., from: ...}
//	  # after: yes asks it of the finished design only; slow calculations may stand there and nowhere else
//	aim: [{least: 'hub_bore'}, {middle: 'tight'}, {nearest: TABLE, of: 'bush_bore'}]
//	scores:
//	  - {id: bush-spoil, criterion: risk, is: 'spoil_share', says: a bore cut over size cannot be put back}
//	features: {keyway: {answer: ruled out, why: ...}, oil-hole: {answer: restore, why: ...}}
//	steps:
//	  - {id: bush-bore, says: 'bore the hub on {borer.id}', hours: 'set_up + cut', on: borer, gives: [hub_bore], cautions: [C17], acts: [boring]}
//	  - {common: common-send}        # a step that steps.yaml lists under named
//	mistakes: [{says: ..., instead: ...}]
//	cautions: [C14]
//
// An act that a caution guards may not stand in a step without that caution.
// `when`, needs and picks rest on what is given, on picks and on words such as
// option.hub, never on a size; option.joint tells a hold or lock which joint it is
// on. In a sentence {wall} is a value and {borer.id} the row that was picked.
//
// A part may name what the seam lets cross (shaft_large, bore_face.family), the
// vocabulary, its own names, joint.* in a hold, and of its own joints, or of the
// finished fit, what their hold defines (bush.pressure).
//
// # Patterns of wear
//
// knowledge/diagnosis holds one a file. It is told only when `when` is surely so;
// what nobody looked at makes it neither so nor not. option.purpose is what the
// fit is for, fit.held whether nothing should move in it.
//
//	schema: diagnosis/1
//	id: fretting
//	told: early                      # first | early | late | last; left out: between early and late
//	says: red-brown powder in a seat that should not move
//	when: 'fit.held and (hub.seen_powder == "red" or shaft.seen_powder == "red")'
//	cause: ...                       # what most likely did it
//	cure: ...                        # what to put right before any repair
//	repair: ...                      # which kind suits
//	again: ...                       # how a hasty repair fails; left out when it does not
//	from: fretting
//
// In its sentences {gap} is a number of the file's numbers, spoken in the user's
// units.
//
// # Criteria, trade names, steps
//
//	broken_should: {points: 8, from: ..., seen: ...}
//	most_energy: {value: 500 J, from: ..., seen: ...}
//	criteria:
//	  - {id: cost, says: ..., quantity: money, is: 'total.hours*wishes.rate + total.costs', better: less, weight: 3, curve: {0 EUR: 100, 1000 EUR: 0}, from: ..., seen: ...}
//	  - {id: risk, says: ..., quantity: number, joins: chance, better: less, weight: 3, curve: {0: 100, 0.5: 0}, from: ..., seen: ...}
//
// joins says how the parts' scores make one number: sum, chance (1 less the
// product of what each leaves), least, most; is may use it as joined.ID, and
// total.hours, total.wait, total.costs. none: is what no score at all stands
// for: 0 of a sum or chance, else what earns least.
//
// Of options.yaml the first name that fits is an option's: shaft, hub and fit
// list ids, any is a treatment of either side, cannot says by purpose why the
// name cannot serve it. Of steps.yaml the steps before and after are part of
// every repair, those named only of repairs whose parts name them.
//
// Expressions hold no numbers but 0, 1, 2, 4 and pi. A misspelt name, a wrong
// unit, an unknown word or a missing source is a fault with its place.
package rules
