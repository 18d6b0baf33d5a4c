package link

// The parts the tests join: like the shipped ones, with fewer rules.

func (b *bench) leaveShaft() *Part {
	return b.part(sheet{id: "leave", side: Shaft, metal: Kept,
		defines: []defineText{
			{"shaft_large", "length", "shaft.largest"}, {"shaft_small", "length", "shaft.smallest"}, {"shaft_face", "row", "shaft.material"},
			{"shaft_give", "per-stress", "(1 - shaft.material.nu)/shaft.material.E"}, {"shaft_hoop", "number", "1"}, {"shaft_expansion", "expansion", "shaft_face.expansion"},
		},
		steps: []stepText{{id: "common:strip"}, {id: "leave-shaft-dress", hours: "1*h/4", gives: "shaft"}},
	})
}

func (b *bench) trueShaft() *Part {
	return b.part(sheet{id: "true-up", side: Shaft, metal: Less, finishes: "shaft_size",
		numbers: []Number{num("least_cut", "length", 20e-6, 20e-6), num("spoil", "number", 0.1, 0.1)},
		picks: []pickText{
			{"datum", "shaft.datums", "it.true_axis", "it.offset", ""},
			{"turner", "shop.machines", "it.turns and it.swing >= shaft.swing", "it.tolerance", ""},
		},
		dims: []dimText{{"shaft_size", "turner", "shaft.smallest/2", "shaft.largest", "mate"}},
		defines: []defineText{
			{"clean_up", "length", "shaft.smallest - 2*datum.offset - least_cut"},
			{"shaft_large", "length", "shaft_size"}, {"shaft_small", "length", "shaft_size"}, {"shaft_face", "row", "shaft.material"},
			{"shaft_give", "per-stress", "(1 - shaft.material.nu)/shaft.material.E"}, {"shaft_hoop", "number", "1"}, {"shaft_expansion", "expansion", "shaft_face.expansion"},
		},
		limits:   []ruleText{{id: "true-up-shaft-cleans", is: "shaft_size <= clean_up", why: "it cleans up only at {clean_up}"}},
		aims:     []aimText{{"most", "shaft_size"}},
		scores:   []scoreText{{"true-up-shaft-spoil", "risk", "spoil"}, {"true-up-shaft-back", "reversible", "0"}},
		features: []Feature{{Kind: "spline", Answer: "ruled out", Why: "it cuts the spline away"}, {Kind: "keyway", Answer: "restore"}},
		steps:    []stepText{{id: "common:strip"}, {id: "true-up-shaft-turn", says: "indicate from {datum.id}", hours: "1*h/2", on: "turner", needs: "mate", gives: "shaft_size"}},
	})
}

func (b *bench) sleeveShaft() *Part {
	return b.part(sheet{id: "sleeve", side: Shaft, metal: More, finishes: "shaft_size",
		picks: []pickText{{"sleeve_material", "materials", "", "", "all"}, {"turner", "shop.machines", "it.turns", "it.tolerance", ""}},
		dims: []dimText{
			{"sleeve_seat", "turner", "shaft.smallest/2", "shaft.smallest", ""},
			{"sleeve_bore", "turner", "shaft.smallest/2", "shaft.smallest", "sleeve_seat"},
			{"shaft_size", "turner", "sleeve_bore", "2*shaft.largest", "mate"},
		},
		joints: []jointText{{name: "sleeve",
			fields: "inner_size: sleeve_seat; outer_size: sleeve_bore; inner_give: (1 - shaft.material.nu)/shaft.material.E; outer_give: (ring + sleeve_material.nu)/sleeve_material.E; " +
				"inner_hoop: 1; outer_hoop: ring; length: fit.length; torque: seat_torque; thrust: seat_thrust",
			rows: "inner_material: shaft.material; outer_material: sleeve_material"}},
		defines: []defineText{
			{"share", "number", "(sleeve_bore/shaft_size)**2"}, {"ring", "number", "(1 + share)/(1 - share)"},
			{"wall", "length", "(shaft_size - sleeve_bore)/2"},
			{"shaft_large", "length", "shaft_size"}, {"shaft_small", "length", "shaft_size"}, {"shaft_face", "row", "sleeve_material"},
			{"shaft_give", "per-stress", "(1 - sleeve_material.nu)/sleeve_material.E"}, {"shaft_hoop", "number", "1"}, {"shaft_expansion", "expansion", "shaft_face.expansion"},
		},
		limits: []ruleText{{id: "sleeve-wall", is: "wall >= 0*mm", why: "w"}},
		steps: []stepText{
			{id: "common:strip"},
			{id: "sleeve-seat", hours: "1*h", on: "turner", gives: "sleeve_seat"},
			{id: "sleeve-turn", hours: "1*h", on: "turner", needs: "sleeve_seat", gives: "sleeve_bore"},
			{id: "sleeve-finish", hours: "1*h", on: "turner", needs: "joint sleeve, mate", gives: "shaft_size"},
		},
	})
}

func (b *bench) leaveHub() *Part {
	return b.part(sheet{id: "leave", side: Hub, metal: Kept,
		defines: []defineText{
			{"bore_small", "length", "hub.smallest"}, {"bore_expansion", "expansion", "bore_face.expansion"}, {"bore_large", "length", "hub.largest"}, {"bore_face", "row", "hub.material"},
			{"bore_hoop", "number", "(1 + (hub.largest/hub.outside)**2)/(1 - (hub.largest/hub.outside)**2)"},
			{"bore_give", "per-stress", "(bore_hoop + hub.material.nu)/hub.material.E"},
		},
		steps: []stepText{{id: "common:strip"}, {id: "leave-hub-dress", hours: "1*h/4", gives: "bore"}},
	})
}

func (b *bench) trueHub() *Part {
	return b.part(sheet{id: "true-up", side: Hub, metal: Less, finishes: "hub_bore",
		numbers: []Number{num("least_cut", "length", 20e-6, 20e-6), num("spoil", "number", 0.2, 0.2)},
		picks:   []pickText{{"borer", "shop.machines", "it.bores and it.swing >= hub.swing", "it.tolerance", ""}},
		dims:    []dimText{{"hub_bore", "borer", "hub.smallest", "hub.outside", "mate"}},
		defines: []defineText{
			{"bore_small", "length", "hub_bore"}, {"bore_expansion", "expansion", "bore_face.expansion"}, {"bore_large", "length", "hub_bore"}, {"bore_face", "row", "hub.material"},
			{"bore_hoop", "number", "(1 + (hub_bore/hub.outside)**2)/(1 - (hub_bore/hub.outside)**2)"},
			{"bore_give", "per-stress", "(bore_hoop + hub.material.nu)/hub.material.E"},
		},
		limits: []ruleText{{id: "true-up-hub-cleans", is: "hub_bore >= hub.largest + least_cut", why: "w"}},
		scores: []scoreText{{"true-up-hub-spoil", "risk", "spoil"}, {"true-up-hub-back", "reversible", "0"}},
		steps:  []stepText{{id: "common:strip"}, {id: "true-up-hub-bore", hours: "1*h", on: "borer", gives: "hub_bore", needs: "mate"}},
	})
}

func (b *bench) bushHub() *Part {
	return b.part(sheet{id: "bush", side: Hub, metal: More, finishes: "bush_bore",
		numbers: []Number{num("least_cut", "length", 20e-6, 20e-6), num("least_wall", "length", 1.6e-3, 1.6e-3), num("left_to_bore", "length", 0.2e-3, 0.4e-3)},
		picks: []pickText{
			{"bush_material", "materials", "it.bush", "", "all"},
			{"borer", "shop.machines", "it.bores and it.swing >= hub.swing", "it.tolerance", ""},
			{"turner", "shop.machines", "it.turns", "it.tolerance", ""},
		},
		dims: []dimText{
			{"hub_bore", "borer", "hub.smallest", "hub.outside", ""},
			{"bush_outside", "turner", "hub.smallest", "hub.outside", "hub_bore"},
			{"bush_bore", "borer", "hub.smallest/2", "bush_outside", "mate"},
		},
		joints: []jointText{{name: "bush",
			fields: "inner_size: bush_outside; outer_size: hub_bore; inner_give: (ring - bush_material.nu)/bush_material.E; outer_give: hub_give; " +
				"inner_hoop: 2/(1 - share); outer_hoop: hub_hoop; length: fit.length; torque: seat_torque; thrust: seat_thrust",
			rows: "inner_material: bush_material; outer_material: hub.material"}},
		defines: []defineText{
			{"wall", "length", "(bush_outside - bush_bore)/2"},
			{"share", "number", "(bush_bore/bush_outside)**2"}, {"ring", "number", "(1 + share)/(1 - share)"},
			{"hub_hoop", "number", "(1 + (hub_bore/hub.outside)**2)/(1 - (hub_bore/hub.outside)**2)"},
			{"hub_give", "per-stress", "(hub_hoop + hub.material.nu)/hub.material.E"},
			{"close_in", "length", "2*bush.pressure*bush_bore/((1 - share)*bush_material.E)"},
			{"bore_small", "length", "bush_bore"}, {"bore_expansion", "expansion", "bore_face.expansion"}, {"bore_large", "length", "bush_bore"}, {"bore_face", "row", "bush_material"},
			{"bore_give", "per-stress", "(ring + bush_material.nu)/bush_material.E"}, {"bore_hoop", "number", "ring"},
		},
		needs: []ruleText{{id: "bush-hub-off", is: "hub.comes_off", why: "it stays on"}},
		limits: []ruleText{
			{id: "bush-cleans", is: "hub_bore >= hub.largest + least_cut", why: "w"},
			{id: "bush-wall", is: "wall >= least_wall", why: "the wall comes to {wall}"},
			{id: "bush-bored-last", is: "low(left_to_bore) >= close_in", why: "w"},
			{id: "bush-for-press-fit", is: "wall >= 2*least_wall", when: `option.purpose == "press-fit"`, why: "w"},
		},
		aims:     []aimText{{"least", "hub_bore"}},
		scores:   []scoreText{{"bush-spoil", "risk", "1/4"}, {"bush-back", "reversible", "1/2"}},
		features: []Feature{{Kind: "keyway", Answer: "ruled out", Why: "a keyway would cut the bush in two"}},
		steps: []stepText{
			{id: "common:strip"},
			{id: "bush-bore", hours: "1*h", on: "borer", gives: "hub_bore"},
			{id: "bush-turn", hours: "1*h", on: "turner", needs: "hub_bore", gives: "bush_outside"},
			{id: "bush-finish", hours: "1*h", on: "borer", needs: "joint bush, mate", gives: "bush_bore"},
		},
	})
}

func (b *bench) press() *Part {
	return b.part(sheet{id: "press", side: Hold,
		numbers: []Number{num("friction", "number", 0.08, 0.16), num("margin", "number", 2, 2)},
		defines: []defineText{
			{"tight_most", "length", "joint.inner_large - joint.outer_small"},
			{"tight_least", "length", "joint.inner_small - joint.outer_large"},
			{"warm", "expansion", "joint.inner_expansion - joint.outer_expansion"},
			{"gives", "per-stress", "joint.inner_give + joint.outer_give"},
			{"pressure", "stress", "max(tight_most, 0*mm)/(joint.outer_size*gives)"},
			{"pressure_least", "stress", "max(tight_least, 0*mm)/(joint.outer_size*gives)"},
			{"grip_thrust", "force", "low(friction)*pressure_least*pi*joint.outer_size*joint.length"},
			{"grip_torque", "torque", "grip_thrust*joint.outer_size/2"},
		},
		limits: []ruleText{
			{id: "press-tight", is: "tight_least >= 0*mm", why: "it is {tight_least} tight"},
			{id: "press-holds", is: "grip_torque >= margin*joint.torque", why: "w"},
			{id: "press-inner", is: "pressure*joint.inner_hoop <= joint.inner_material.yield", why: "w"},
		},
		aims:     []aimText{{"middle", "tight_most"}},
		features: []Feature{{Kind: "spline", Answer: "ruled out", Why: "a spline does not press"}},
		steps:    []stepText{{id: "press-in", hours: "1*h/2", needs: "joint sizes", gives: "joint"}},
	})
}

func (b *bench) slip() *Part {
	p := b.press()
	p.ID, p.FitOnly = "slip", true
	return p
}

func (b *bench) running() *Part {
	return b.part(sheet{id: "running", side: Purpose,
		numbers: []Number{num("rub", "number", 0.1, 0.2), num("least", "length", 30e-6, 30e-6)},
		defines: []defineText{
			{"tightest", "length", "bore_small - shaft_large"}, {"loosest", "length", "bore_large - shaft_small"},
			{"grows", "expansion", "shaft_face.expansion - bore_face.expansion"},
			{"seat_torque", "torque", "high(rub)*duty.load*shaft_large/2"}, {"seat_thrust", "force", "duty.thrust"}, {"seat_length", "length", "fit.length"},
		},
		limits: []ruleText{{id: "run-free", is: "tightest >= least", why: "w"}},
		needs:  []ruleText{{id: "run-grows", is: "grows <= 0/K or wishes.interchange", why: "w"}},
		scores: []scoreText{{"run-life", "life", "4"}},
	})
}

func (b *bench) pressFit() *Part {
	return b.part(sheet{id: "press-fit", side: Purpose, static: true,
		defines: []defineText{
			{"seat_torque", "torque", "duty.torque"}, {"seat_thrust", "force", "duty.thrust"}, {"seat_length", "length", "fit.length"},
			{"squeeze", "stress", "fit.pressure"},
		},
	})
}

// stock fills the bench with every part.
func (b *bench) stock() *bench {
	b.in.Parts = []*Part{b.leaveShaft(), b.trueShaft(), b.sleeveShaft(), b.leaveHub(), b.trueHub(), b.bushHub(), b.press(), b.slip(), b.running(), b.pressFit()}
	b.in.Common = b.part(sheet{id: "steps", side: Shared, numbers: []Number{num("strip_hours", "time", 3600, 3600)},
		steps: []stepText{{id: "strip", hours: "strip_hours"}, {id: "close-up", hours: "1*h/2"}, {id: "unused", hours: "1*h"}}})
	b.in.Common.Steps[1].Always, b.in.Common.Steps[1].Last = true, true
	b.in.Scoring = b.part(sheet{id: "criteria", side: Shared, numbers: []Number{num("hour_worth", "number", 3, 3)}})
	b.in.Criteria = []Criterion{
		{ID: "risk", Join: Risk}, {ID: "reversible", Join: Least, None: 1}, {ID: "life", Join: Most},
		{ID: "effort", Is: b.expr(b.in.Scoring, scope{b: b, s: &sheet{numbers: b.in.Scoring.Numbers}}, "hour_worth*total.hours/h + joined.risk")},
	}
	return b
}

func (b *bench) named(id string, side Side) *Part {
	b.t.Helper()
	for _, p := range b.in.Parts {
		if p.ID == id && p.Side == side {
			return p
		}
	}
	b.t.Fatalf("no %s %s is in stock", side, id)
	return nil
}

// joined links parts by name, with press in every joint.
func (b *bench) joined(shaft, hub, purpose string) *Option {
	b.t.Helper()
	s, h, p := b.named(shaft, Shaft), b.named(hub, Hub), b.named(purpose, Purpose)
	holds := map[string]*Part{}
	for _, j := range jointsOf(s, h, p) {
		holds[j.Name] = b.named("press", Hold)
	}
	return b.link(s, h, p, holds)
}
