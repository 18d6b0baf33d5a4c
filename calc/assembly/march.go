package assembly

import "math"

// course is what is marched through time: hub and shaft as rings, or along the
// shaft. It is no interface so that nothing is put on the heap.
type course struct {
	ring *radial
	rod  *rod
}

func (c course) step(t *field, dt float64) {
	if c.rod != nil {
		c.rod.step(t, dt)
		return
	}
	c.ring.step(t, dt)
}

func (c course) gap(t *field) float64 {
	if c.rod != nil {
		return c.rod.gap(t)
	}
	return c.ring.gap(t)
}

// Each step is held to an error of exact of the first gap, the end is found to
// shut of it, and there are no more than most steps nor longest seconds; our
// choice. Steps held ten times closer move no tried time by 0.1 %.
const (
	exact   = 3e-4
	shut    = 1e-5
	most    = 3000
	longest = 36000.0
)

// march goes on in steps of which the error is known, each taken whole and in two
// halves: twice the halves less the whole is right to the second order. Where the
// gap shuts within a step, the step is cut until it ends there. The answer is NaN
// where the gap stays open.
func (c course) march(now *field) float64 {
	first := c.gap(now)
	time, dt, gap := 0.0, 1e-3, first
	for range most {
		whole, halves := *now, *now
		c.step(&whole, dt)
		c.step(&halves, dt/2)
		c.step(&halves, dt/2)
		for i := range halves {
			halves[i] = 2*halves[i] - whole[i]
		}
		next := c.gap(&halves)
		wrong := math.Abs(next-c.gap(&whole)) / first
		switch {
		case wrong > exact:
			dt *= max(0.2, 0.9*math.Sqrt(exact/wrong))
			continue
		case math.Abs(next) <= shut*first:
			return time + dt
		case next < 0:
			dt *= max(0.1, gap/(gap-next))
			continue
		}
		time, gap, *now = time+dt, next, halves
		if time > longest {
			break
		}
		dt *= min(3, 0.9*math.Sqrt(exact/max(wrong, 1e-12)))
	}
	return math.NaN()
}
