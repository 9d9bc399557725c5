package fire

import "math"

// The lumped fire: heat is the lesser of what the air and what the lit coals give, the air comes through top vent,
// bottom vent and bed in series, coals catch from what burns, the grate follows with one lag up and one down.
// Heat q is written as the rise in K that it would give a calm 22.5 in kettle before the loss grows with it.
const (
	curveK      = 600.0 // the loss grows by R/curveK: radiation and convection of a steel shell (assumption)
	airHeatK    = 423.0 // through openings as wide as the top vent, at 100 K; fitted, 68 % of 378-475
	leastPull   = 0.02  // of the draught squared: a cold grill draws a little
	blowMS      = 2.7   // wind that pulls as hard as a rise of 100 K does (fitted with the rest)
	pullRiseK   = 100.0 // the rise at which the draught is 1, with warm air of pullAirK
	pullAirK    = 294.0
	litShare    = 0.35 // of its heat that a coal gives the grate with the lid off (assumption)
	lidOffTau   = 3.0  // minutes (assumption)
	deepForm    = 1.28 // loss of an upright smoker or drum beside a kettle's; fitted, 1.23-1.33
	deepHold    = 2.0  // and the room for ash under its coals (assumption)
	relitShare  = 0.8  // of the coals that starve, those that can be lit again (assumption)
	settleTurns = 3
	settledK    = 0.5  // another turn changes less than a third of it
	meatPerKg   = 0.05 // share of the loss that a kilogram of cold meat adds, gone in meatMinutes (assumption)
	meatMinutes = 120.0
	sunK        = 15.0 // full sun on a black lid, about (assumption)
	mostShareN  = 30.0

	// The burn law at pullRiseK, in briquettes an hour for each K of q.
	burntPerK = referencePerHour / (pullRiseK * (1 + pullRiseK/curveK))
	// EstablishedShare is what a pile with unlit coals about it gives of its air's heat once it has grown.
	establishedN = 2.0
)

// Traits are what one grill and one fire do with their air: the medians of [Grill.Usual], or somebody's own.
type Traits struct {
	Gain        float64 // heat of its air, of the usual grill's
	Leak        float64 // air that gets in beside each vent, in fully open top vents
	Bed         float64 // the way through grate, coals and ash holes, likewise
	Ratio       float64 // of the bottom vent fully open, likewise
	LitK        float64 // q of one lit briquette with all the air that it wants
	Spread      float64 // unlit coals that catch for each that burns
	UpMinutes   float64 // lag while it warms
	DownMinutes float64 // and while it cools
	Full        float64 // lit coals for its air, 1 being as many as can burn: more than so many starve
	AshHold     float64 // briquettes whose ash closes the bed by a factor e
	Blow        float64 // how wind sits on the vents: 1 blows in, -1 holds back; nobody knows before it blew
	GaugeRatio  float64 // rise of the lid gauge, of the grate's
	RingLit     float64 // lit coals of a 2-2-1 fuse
	HalfUnlit   float64 // unlit coals at which spreading is half as fast
	StarveTau   float64 // minutes in which starved coals go out
	AshFade     float64 // how much faster an all-lit bed fades than its mass
	Gust        float64 // what wind that nobody told of adds to the draught squared, 1 being a rise of 100 K
}

// Usual are the figures of a grill of which nothing else is known. Fitted to reports of home cooks (74 rows), ranges of
// 68 %: LitK 12.3-16.6, leak 0.11-0.22 and 0.44-0.62, Bed 0.46-0.60, Spread 2.4-3.9, AshHold 190-340, AshFade 1.2-1.9;
// they are too narrow, double them in mind. Ratio, Full, HalfUnlit and StarveTau are assumptions.
func (g Grill) Usual() Traits {
	t := Traits{
		Gain: 1, Leak: 0.16, Bed: 0.53, Ratio: 3, LitK: 14.3, Spread: 3, UpMinutes: warmMinutes, DownMinutes: coolMinutes,
		Full: establishedN, AshHold: 252, GaugeRatio: g.gaugeRatio(), RingLit: 15.7, HalfUnlit: 20, StarveTau: 45, AshFade: 1.5,
	}
	if g.deep() {
		t.Leak = 0.52
	}
	return t
}

// gaugeRatio is the typed offset as a share of the rise.
func (g Grill) gaugeRatio() float64 { return 1 + g.GaugeOffsetK/gaugeTypedK }

// Coals are a fire at an instant, in briquettes or the lump that gives the same heat.
type Coals struct {
	RiseK, Lit, Unlit float64
	Burnt             float64 // since the ash was cleared
}

// Setting is what stands about a fire: vents, lid and weather.
type Setting struct {
	Top, Bottom float64 // shares open
	LidOff      bool
	Loss        float64 // of a calm dry kettle's: weather, pan, cold meat
	AirK        float64 // of the open air, kelvin
	WindMS      float64 // at the grill
	SunK        float64
}

// Setting is the weather about this grill with its vents so far open, and what stands in it.
func (g Grill) Setting(w Weather, top, bottom, coldMeat float64) Setting {
	s := Setting{Top: top, Bottom: bottom, Loss: w.factor() * (1 + coldMeat), AirK: w.AirC + 273.15, WindMS: w.atGrillMS()}
	if g.WaterPan {
		s.Loss *= waterPanFactor
	}
	return s
}

// ColdMeat is the share that cold meat adds to the loss some minutes after it went in.
func ColdMeat(kg, minutes float64) float64 {
	if minutes < 0 {
		return 0
	}
	return meatPerKg * max(kg, 0) * max(0, 1-minutes/meatMinutes)
}

// Hearth steps the fires of one grill.
type Hearth struct {
	size, form, hold, ring float64 // ring: lit coals of its fuse, of a 2-2-1's; 0 for a pile
}

// Hearth is the grill with a layout; section is the fuse of a ring, nil for the one that cooks lay most.
func (g Grill) Hearth(l Layout, section Section) Hearth {
	h := Hearth{size: math.Pow(g.equivalentM()/referenceM, sizeExponent), form: 1, hold: 1}
	if g.deep() {
		h.form, h.hold = deepForm, deepHold
	}
	if l == Ring {
		if h.ring = 1; section != nil {
			h.ring = float64(section.perStep()) / float64(sections[len(sections)-1].perStep())
		}
	}
	return h
}

// openings is the way of the air: three openings in series.
func (h *Hearth) openings(t *Traits, burnt float64, s *Setting) float64 {
	top, bottom := s.Top+t.Leak, t.Ratio*s.Bottom+t.Leak
	bed := t.Bed * decay(burnt/(t.AshHold*h.size*h.size*h.hold))
	return 1 / math.Sqrt(1/(top*top)+1/(bottom*bottom)+1/(bed*bed))
}

// airK is the heat that the air allows at a rise.
func airK(t *Traits, open, riseK float64, s *Setting) float64 {
	wind := s.WindMS / blowMS
	pull := riseK/(riseK+s.AirK)*(pullRiseK+pullAirK)/pullRiseK + t.Blow*wind*wind + t.Gust
	return airHeatK * t.Gain * open * math.Sqrt(max(pull, leastPull))
}

// riseOf is the rise that a heat keeps up.
func (h *Hearth) riseOf(q float64, s *Setting) float64 {
	return curveK/2*(math.Sqrt(1+4*q/(curveK*h.form*s.Loss))-1) + s.SunK
}

// aim is where the grate is bound for, with the heat and the air's heat there.
func (h *Hearth) aim(t *Traits, c *Coals, s *Setting) (riseK, q, qa float64) {
	open := h.openings(t, c.Burnt, s)
	riseK = max(c.RiseK, leastRiseK)
	for range settleTurns {
		qa = airK(t, open, riseK, s)
		q = qa * (1 - decay(min(t.LitK*c.Lit/(h.size*qa), mostShareN)))
		was := riseK
		if riseK = h.riseOf(q, s); math.Abs(riseK-was) < settledK {
			break
		}
	}
	return riseK, q, qa
}

// Lit for its air: under 0.7 the lit coals are the limit, at 2 the air is.
func (h *Hearth) Lit(t *Traits, c Coals, s Setting) float64 {
	_, _, qa := h.aim(t, &c, &s)
	return t.LitK * c.Lit / (h.size * qa)
}

// Step is the fire some minutes later, three at most to be true to the model.
func (h *Hearth) Step(t *Traits, c Coals, s *Setting, minutes float64) Coals {
	if s.LidOff {
		return h.lidOff(t, c, minutes)
	}
	aim, q, qa := h.aim(t, &c, s)
	tau := t.UpMinutes
	if aim < c.RiseK {
		tau = t.DownMinutes
	}
	c.RiseK = aim + (c.RiseK-aim)*decay(minutes/tau)
	burn := burntPerK * q * h.size
	out := max(0, c.Lit-t.Full*h.size*qa/t.LitK) / t.StarveTau * 60
	h.consume(t, &c, burn, t.Spread*burn, out, minutes/60)
	return c
}

// lidOff is a fire in the open: all the air it wants, and little of its heat stays (assumptions).
func (h *Hearth) lidOff(t *Traits, c Coals, minutes float64) Coals {
	aim := h.openAim(t, c.Lit)
	c.RiseK = aim + (c.RiseK-aim)*decay(minutes/lidOffTau)
	burn := burntPerK * t.LitK * c.Lit
	h.consume(t, &c, burn, 1.5*t.Spread*burn, 0, minutes/60)
	return c
}

func (h *Hearth) openAim(t *Traits, lit float64) float64 {
	x := litShare * t.LitK * lit / h.size
	return x / (1 + x/curveK)
}

// consume burns, lights and starves coals for some hours; rates are an hour's.
func (h *Hearth) consume(t *Traits, c *Coals, burn, catch, out, hours float64) {
	if h.ring > 0 && c.Unlit > 0 {
		more := (h.ring*t.RingLit*h.size - c.Lit) * -math.Expm1(-hours*60/ringCatchTau)
		more = min(more, c.Unlit)
		burnt := min(burn*hours, c.Unlit-max(more, 0))
		c.Lit, c.Unlit, c.Burnt = c.Lit+more, c.Unlit-max(more+burnt, 0), c.Burnt+burnt
		return
	}
	catch = min(catch*c.Unlit/(c.Unlit+t.HalfUnlit)*hours, c.Unlit)
	old := 1 + (t.AshFade-1)*c.Lit/(c.Lit+c.Unlit+1)
	burnt := min(burn*hours, c.Lit)
	gone := min(out*hours, c.Lit-min(old*burnt, c.Lit))
	c.Lit = max(c.Lit+catch-old*burnt-gone, 0)
	c.Unlit, c.Burnt = c.Unlit-catch+relitShare*gone, c.Burnt+burnt
}

// A fuse's glow reaches its length in about twice this (assumption; it makes a ring's warm-up longer, as practice has it).
const ringCatchTau = 20.0

// Steady is the rise at which a fire of these coals would stay if they did not change.
func (h *Hearth) Steady(t *Traits, c Coals, s Setting) float64 {
	if s.LidOff {
		return h.openAim(t, c.Lit)
	}
	for range 6 {
		c.RiseK, _, _ = h.aim(t, &c, &s)
	}
	return c.RiseK
}

// Established is the rise of a pile that has grown as far as its air lets it, and its lit coals.
func (h *Hearth) Established(t *Traits, burnt float64, s Setting) (riseK, lit float64) {
	open := h.openings(t, burnt, &s)
	riseK = pullRiseK
	qa := 0.0
	for range 12 {
		qa = airK(t, open, riseK, &s)
		riseK = h.riseOf(qa*-math.Expm1(-t.Full), &s)
	}
	lit = t.Full * h.size * qa / t.LitK
	if h.ring > 0 {
		lit = h.ring * t.RingLit * h.size
		riseK = h.Steady(t, Coals{RiseK: riseK, Lit: lit, Burnt: burnt}, s)
	}
	return riseK, lit
}

// BurnsPerHour is what the fire burns, briquettes an hour.
func (h *Hearth) BurnsPerHour(t *Traits, c Coals, s Setting) float64 {
	_, q, _ := h.aim(t, &c, &s)
	return burntPerK * q * h.size
}

// Size is the grill's share of a 22.5 in kettle's heat.
func (h *Hearth) Size() float64 { return h.size }
