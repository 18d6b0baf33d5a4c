// Package quantity holds the SI types every calculation speaks, and reads and
// prints the sizes, forces and temperatures a machinist writes.
//
// Start with Parse for typed text, with Length and its fellows for formulas,
// with Speech for printing. The package knows no fit, no rule and no material.
package quantity

// Dim is what kind of quantity a number is: exponents of length, mass, time,
// temperature and money, and a scale for the kinds that never mix with others.
// Speed of rotation is revolutions per second (1/Time); angles and counts are
// plain numbers. Two numbers may be added or compared only if their Dim is equal.
type Dim struct {
	Len, Mass, Time, Temp, Money int8
	Scale                        Scale
}

// Scale marks the readings that are no product of units: an absolute
// temperature may be compared and subtracted, a hardness only compared.
type Scale uint8

const (
	Ratio    Scale = iota // an ordinary quantity: zero means none of it
	Absolute              // a temperature on the kelvin scale, not a change of temperature
	HRC
	HB
	HV
)

// The kinds of quantity that the vocabulary and the case file name, each by the
// exponents of its SI unit, which are exact.
var (
	Number          = Dim{}
	LengthDim       = Dim{Len: 1}
	AreaDim         = Dim{Len: 2}
	VolumeDim       = Dim{Len: 3}
	MassDim         = Dim{Mass: 1}
	TimeDim         = Dim{Time: 1}
	RotationDim     = Dim{Time: -1} // revolutions per second; strokes per second
	SpeedDim        = Dim{Len: 1, Time: -1}
	ForceDim        = Dim{Len: 1, Mass: 1, Time: -2}
	TorqueDim       = Dim{Len: 2, Mass: 1, Time: -2}
	EnergyDim       = TorqueDim // the same units; named apart for readers only
	PowerDim        = Dim{Len: 2, Mass: 1, Time: -3}
	StressDim       = Dim{Len: -1, Mass: 1, Time: -2}
	PerStressDim    = Dim{Len: 1, Mass: -1, Time: 2} // give: growth per diameter per pressure
	PVDim           = Dim{Mass: 1, Time: -3}         // pressure times sliding speed
	DensityDim      = Dim{Len: -3, Mass: 1}
	TemperatureDim  = Dim{Temp: 1, Scale: Absolute}
	ChangeDim       = Dim{Temp: 1} // a change of temperature
	ExpansionDim    = Dim{Temp: -1}
	MoneyDim        = Dim{Money: 1}
	RateDim         = Dim{Money: 1, Time: -1}
	HardnessHRC     = Dim{Scale: HRC}
	HardnessHB      = Dim{Scale: HB}
	HardnessHV      = Dim{Scale: HV}
	WearRateDim     = Dim{Len: 1, Time: -1}
	SpecificWearDim = Dim{Len: 1, Mass: -1, Time: 2} // wear volume per force and distance: m3/(N m)
	PriceByMassDim  = Dim{Money: 1, Mass: -1}
	ConductivityDim = Dim{Len: 1, Mass: 1, Time: -3, Temp: -1} // W/(m K)
	SpecificHeatDim = Dim{Len: 2, Time: -2, Temp: -1}          // J/(kg K)
	FilmDim         = Dim{Mass: 1, Time: -3, Temp: -1}         // W/(m2 K): heat passed on by a surface
	ViscosityDim    = Dim{Len: -1, Mass: 1, Time: -1}          // of an oil, dynamic
	KinematicDim    = Dim{Len: 2, Time: -1}                    // viscosity over density, as oils are graded
	FlowDim         = Dim{Len: 3, Time: -1}
	CoolingDim      = Dim{Len: 2, Mass: 1, Time: -3, Temp: -1}  // heat lost per kelvin warmer
	HeatCapacityDim = Dim{Len: -1, Mass: 1, Time: -2, Temp: -1} // J/(m3 K)
	LineHeatDim     = ForceDim                                  // J/m: heat along a bead
)

// Kinds maps the word a vocabulary entry uses for `quantity:` to its Dim.
var Kinds = map[string]Dim{
	"number": Number, "length": LengthDim, "area": AreaDim, "volume": VolumeDim,
	"mass": MassDim, "time": TimeDim, "rotation": RotationDim, "speed": SpeedDim,
	"force": ForceDim, "torque": TorqueDim, "energy": EnergyDim, "power": PowerDim,
	"stress": StressDim, "per-stress": PerStressDim, "pv": PVDim, "density": DensityDim,
	"temperature": TemperatureDim, "temperature-change": ChangeDim, "expansion": ExpansionDim,
	"money": MoneyDim, "price-by-mass": PriceByMassDim, "rate": RateDim, "wear-rate": WearRateDim, "angle": Number,
	"specific-wear": SpecificWearDim,
	"viscosity":     ViscosityDim, "kinematic-viscosity": KinematicDim, "flow": FlowDim, "cooling": CoolingDim,
	"heat-capacity": HeatCapacityDim, "line-heat": LineHeatDim,
	"hardness-hrc": HardnessHRC, "hardness-hb": HardnessHB, "hardness-hv": HardnessHV,
}

// Typed quantities for the exported calculations; all SI.
type (
	Length            float64 // m; sizes are diameters unless the name says otherwise
	Volume            float64 // m3
	Mass              float64 // kg
	Time              float64 // s
	Rotation          float64 // revolutions per second
	Speed             float64 // m/s
	Force             float64 // N
	Torque            float64 // N m
	Energy            float64 // J, which is N m
	Power             float64 // W
	Stress            float64 // Pa; pressures too
	PV                float64 // Pa m/s
	Density           float64 // kg/m3
	Temperature       float64 // K, absolute
	TemperatureChange float64 // K, a difference
	Expansion         float64 // 1/K
	Conductivity      float64 // W/(m K)
	SpecificHeat      float64 // J/(kg K)
	Film              float64 // W/(m2 K): heat passed on by a surface
	Viscosity         float64 // Pa s, dynamic
	Kinematic         float64 // m2/s, viscosity over density
	Flow              float64 // m3/s
	Cooling           float64 // W/K
)
