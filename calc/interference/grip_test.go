package interference_test

import (
	"fmt"
	"math"
	"testing"

	"wornfit/calc/basis"
	"wornfit/calc/interference"
	"wornfit/calc/outside"
	q "wornfit/calc/quantity"
)

// A 25 mm stud in a steel hub, measured 25 µm tight, both faces Rz 6.3.
func TestGripAndPressForceAgreeWithASecondRoute(t *testing.T) {
	r := outside.Get(t, outside.Read(t, "reference.json"), "R20")
	m := interference.Elastic{E: q.Stress(r.In(t, "E")), Nu: r.In(t, "nu")}
	seat, length, δ, rz := q.Length(r.In(t, "d1")), q.Length(r.In(t, "length")), q.Length(r.In(t, "delta")), q.Length(r.In(t, "rz"))
	pair := interference.Pair{Seat: seat, Outside: q.Length(r.In(t, "d2")), Shaft: m, Hub: m}

	left, notes, err := interference.Effective(δ, rz, rz, r.In(t, "loss"))
	fine(t, err)
	if len(notes) > 0 {
		t.Errorf("notes %v, want none", notes)
	}
	r.Want(t, "effective", float64(left))
	least, err := interference.ContactPressure(pair, left)
	fine(t, err)
	r.Want(t, "p_with_loss", float64(least))
	thrust, err := interference.GripThrust(seat, length, least, r.In(t, "mu"))
	fine(t, err)
	r.Want(t, "thrust", float64(thrust))
	torque, err := interference.GripTorque(seat, length, least, r.In(t, "mu"))
	fine(t, err)
	r.Want(t, "torque", float64(torque))

	most, err := interference.ContactPressure(pair, δ)
	fine(t, err)
	r.Want(t, "p_no_loss", float64(most))
	force, err := interference.PressForce(interference.Stroke{Seat: seat, SeatLength: length, HubLength: length, Travel: length}, most, r.In(t, "mu_high"))
	fine(t, err)
	r.Want(t, "press_force_high", float64(force))
}

func TestRoughnessAsDeepAsTheInterferenceIsNotedNotHidden(t *testing.T) {
	left, notes, err := interference.Effective(10e-6, 6.3e-6, 6.3e-6, 0.8)
	fine(t, err)
	near(t, "left", float64(left), -0.08e-6, 1e-9)
	if len(notes) != 1 || notes[0].Grade != basis.Memory {
		t.Errorf("notes %v, want one from memory", notes)
	}
}

func TestTorqueAndThrustAddAsTheirMotionsDo(t *testing.T) {
	used, err := interference.GripUsed(0.02, 30, 4000, 5000) // 3000 N round, 4000 N along
	fine(t, err)
	near(t, "used", used, 1, 1e-12)
	used, err = interference.GripUsed(0.02, 0, 4000, 5000)
	fine(t, err)
	near(t, "thrust alone", used, 0.8, 1e-12)
}

// A bush 20 long goes through a hub 30 long: force rises, stays, falls.
func TestPressingThrough(t *testing.T) {
	for _, c := range []struct{ travel, engaged q.Length }{
		{0, 0}, {0.010, 0.010}, {0.020, 0.020}, {0.025, 0.020}, {0.030, 0.020}, {0.045, 0.005}, {0.050, 0},
	} {
		s := interference.Stroke{Seat: 0.032, SeatLength: 0.020, HubLength: 0.030, Travel: c.travel}
		got, err := interference.Engaged(s)
		fine(t, err)
		if math.Abs(float64(got-c.engaged)) > 1e-15 {
			t.Errorf("after %v m of travel %v m are in the hub, want %v", c.travel, got, c.engaged)
		}
		force, err := interference.PressForce(s, 20e6, 0.1)
		fine(t, err)
		if math.Abs(float64(force)-0.1*math.Pi*0.032*20e6*float64(c.engaged)) > 1e-9 {
			t.Errorf("after %v m of travel the force is %v N", c.travel, force)
		}
	}
}

func TestGripRefuses(t *testing.T) {
	nan := math.NaN()
	_, _, err := interference.Effective(q.Length(nan), 0, 0, 0.8)
	refused(t, "unknown interference", err, "interference")
	_, _, err = interference.Effective(1e-5, -1e-6, 0, 0.8)
	refused(t, "roughness below nothing", err, "roughness of the shaft")
	_, _, err = interference.Effective(1e-5, 0, q.Length(nan), 0.8)
	refused(t, "unknown roughness", err, "roughness of the hub")
	_, _, err = interference.Effective(1e-5, 0, 0, 8)
	refused(t, "loss in tenths", err, "loss")
	_, err = interference.GripThrust(0, 0.02, 1e6, 0.1)
	refused(t, "no seat", err, "seat")
	_, err = interference.GripThrust(0.02, 0, 1e6, 0.1)
	refused(t, "no length", err, "length")
	_, err = interference.GripTorque(0.02, 0.02, q.Stress(nan), 0.1)
	refused(t, "unknown pressure", err, "pressure")
	_, err = interference.GripTorque(0.02, 0.02, 1e6, 12)
	refused(t, "friction in hundredths", err, "friction")
	_, err = interference.GripUsed(0.02, 10, 10, 0)
	refused(t, "a joint that holds nothing", err, "grip of the joint")
	_, err = interference.GripUsed(0.02, q.Torque(nan), 10, 10)
	refused(t, "unknown torque", err, "torque")
	_, err = interference.GripUsed(0.02, 10, -1, 10)
	refused(t, "thrust with a sign", err, "thrust")
	_, err = interference.GripUsed(0, 10, 1, 10)
	refused(t, "no seat", err, "seat")
	_, err = interference.Engaged(interference.Stroke{SeatLength: 0.02, HubLength: 0.02, Travel: 0.05})
	refused(t, "out at the far side", err, "travel")
	_, err = interference.Engaged(interference.Stroke{HubLength: 0.02})
	refused(t, "no seat length", err, "length of the seat")
	_, err = interference.PressForce(interference.Stroke{Seat: 0.02, SeatLength: 0.02}, 1e6, 0.1)
	refused(t, "no hub length", err, "length of the hub")
}

func ExamplePressForce() {
	// The bush of 32 mm just home in its 30 mm housing, at 19.75 MPa and friction 0.2.
	f, err := interference.PressForce(interference.Stroke{Seat: 0.032, SeatLength: 0.030, HubLength: 0.030, Travel: 0.030}, 19.75e6, 0.2)
	fmt.Printf("%.1f kN %v\n", f/1e3, err)
	// Output: 11.9 kN <nil>
}

func ExampleGripTorque() {
	torque, err := interference.GripTorque(0.025, 0.025, 46.1e6, 0.12)
	fmt.Printf("%.0f N m %v\n", torque, err)
	// Output: 136 N m <nil>
}
