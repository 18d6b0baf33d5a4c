package assembly

import "math"

// cells is into how many rings shaft and hub are each divided, finest at the
// joint, each wider than its neighbour by stretch: our choice. Twice as many
// move no tried time over a second by 0.2 %, nor a shorter one by 0.4 %.
const (
	cells   = 24
	stretch = 1.12 // our choice
)

// radial is shaft and hub as rings, the shaft's middle first, per metre of width.
type radial struct {
	j     *Joining
	lie   Lie
	area  [2 * cells]float64 // of the ring's section
	heat  [2 * cells]float64 // to warm it by 1 K
	loss  [2 * cells]float64 // to the air for each kelvin
	pass  [2 * cells]float64 // to the next ring; at the joint it follows the gap
	inner float64            // resistance from the last ring of the shaft to its face
	outer float64            // and from the hub's bore to its first ring
	bore  float64            // how far round the joint is
}

type field [2 * cells]float64

func newRadial(j *Joining, lie Lie) radial {
	r := radial{j: j, lie: lie}
	a, in, out := float64(j.Seat)/2, float64(j.ShaftBore)/2, float64(j.Outside)/2
	r.bore = 2 * math.Pi * a
	r.divide(cells-1, -1, a, in, j.Shaft)
	r.divide(cells, 1, a, out, j.Hub)
	faces := 2 * float64(j.Film) / float64(j.Width)
	for i := cells; i < 2*cells; i++ {
		r.loss[i] = faces * r.area[i]
	}
	r.loss[2*cells-1] += float64(j.Film) * 2 * math.Pi * out
	return r
}

// divide lays the rings from the joint at radius a to the far radius, the first at
// index i and on in steps of way.
func (r *radial) divide(i, way int, a, far float64, m Metal) {
	k, heat := float64(m.Conductivity), m.heat()
	wide := (far - a) * (stretch - 1) / (math.Pow(stretch, cells) - 1)
	if near := math.Abs(wide) / 2 / k; way < 0 {
		r.inner = near
	} else {
		r.outer = near
	}
	at := a
	for n := range cells {
		next := at + wide
		if n == cells-1 {
			next = far
		}
		r.area[i] = math.Pi * math.Abs(next*next-at*at)
		r.heat[i] = heat * r.area[i]
		if n < cells-1 { // between the middles of this ring and the next
			between := 2 * math.Pi * next * k / (math.Abs(wide) * (1 + stretch) / 2)
			r.pass[min(i, i+way)] = between
		}
		at, wide, i = next, wide*stretch, i+way
	}
}

func (r *radial) start(t *field) {
	for i := range cells {
		t[i], t[cells+i] = float64(r.j.ShaftAt), float64(r.j.HubAt)
	}
}

func (r *radial) means(t *field) (hub, shaft float64) {
	var areaHub, areaShaft float64
	for i := range cells {
		shaft += r.area[i] * t[i]
		areaShaft += r.area[i]
		hub += r.area[cells+i] * t[cells+i]
		areaHub += r.area[cells+i]
	}
	return hub / areaHub, shaft / areaShaft
}

func (r *radial) gap(t *field) float64 { return r.j.gap(r.means(t)) }

// step goes on by dt with the gap as it is at the start: implicit Euler, the
// chain of rings solved from the middle out and back.
func (r *radial) step(t *field, dt float64) {
	h := r.lie.film(r.gap(t), float64(r.j.Rough), t[cells], t[cells-1])
	r.pass[cells-1] = r.bore / (r.inner + r.outer + 1/h)
	room := float64(r.j.Room)
	var up field // what of the next ring's temperature each depends on
	left, before := 0.0, 0.0
	for i := range t {
		store := r.heat[i] / dt
		own := store + r.loss[i] + left + r.pass[i]
		from := store*t[i] + r.loss[i]*room
		if i > 0 {
			own -= left * up[i-1]
			from += left * before
		}
		up[i] = r.pass[i] / own
		before = from / own
		t[i] = before
		left = r.pass[i]
	}
	for i := 2*cells - 2; i >= 0; i-- {
		t[i] += up[i] * t[i+1]
	}
}

// closes returns when the gap is shut, or NaN where it stays open.
func (r *radial) closes() float64 {
	var now field
	r.start(&now)
	return course{ring: r}.march(&now)
}
