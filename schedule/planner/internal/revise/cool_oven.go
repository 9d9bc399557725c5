package revise

import (
	"context"
	"fmt"
	"slices"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/safety"
)

// What is below its minimum goes into an oven that cooks it: 325 F for what may be dangerous
// inside, 250 F or more for another joint straight from the hot grill; an oven under 225 F takes
// finished food only. A cook who told of a cooler one is told so, and the day goes on as if it
// were set right now: no time is given for a way that nobody is to go.

// ovenSlackK is how far below that an oven is passed over: a dial is no finer (assumption).
const ovenSlackK = 5 / 1.8

// ovenHeat is what an oven has been since an instant, degC.
type ovenHeat struct {
	at time.Time
	c  float64
}

// ovenAtC is the heat of the oven that a piece was carried to, at an instant, degC; 0 where
// nobody told it.
func (a *liveBatch) ovenAtC(at time.Time) float64 { return heatAt(a.ovenC, a.heats, at) }

// heatAt is the heat of an oven at an instant, degC: as first told, or as its thermometer showed since.
func heatAt(told float64, heats []ovenHeat, at time.Time) float64 {
	for _, h := range heats {
		if !at.Before(h.at) {
			told = h.c
		}
	}
	return told
}

// readOvens takes what the thermometer of the oven showed since a piece cooks in it.
func (v *Revision) readOvens() {
	for _, a := range v.batches {
		if a.where != cooking || !a.oven.set {
			continue
		}
		for _, e := range v.log {
			if e.Kind == schedule.LogOven && e.At.After(a.oven.at) && !e.At.After(v.now) {
				a.heats = append(a.heats, ovenHeat{e.At, e.C})
			}
		}
		slices.SortStableFunc(a.heats, func(x, y ovenHeat) int { return x.at.Compare(y.at) })
	}
}

// rawOvenC is the coolest oven that takes a piece below its minimum, degC; one that waits for its sear cooks on there.
func (a *liveBatch) rawOvenC() float64 { return safety.RawOvenC(a.batch.It.Category, a.batch.It.Prep) }

// isRaw says whether a piece is below its minimum, as far as is known.
func (a *liveBatch) isRaw() bool {
	least := a.leastC()
	if least == 0 || a.believed == nil {
		return least > 0 && (len(a.cores) == 0 || a.cores[len(a.cores)-1].C < least)
	}
	return a.believed.CoreC(a.believed.Journey.Now, sureHeld) < least-sameC
}

// warmOvens has the day go on with ovens as hot as they must be, where somebody told of one
// that is too cool for the raw piece in it.
func (v *Revision) warmOvens(ctx context.Context) error {
	for _, a := range v.batches {
		is := a.ovenAtC(v.now)
		if a.where != cooking || !v.isIndoors(a) || is == 0 || a.ovenC == 0 && len(a.heats) == 0 || is >= a.rawOvenC()-ovenSlackK || !a.isRaw() {
			continue
		}
		a.cool = is
		a.heats = append(a.heats, ovenHeat{v.now, a.rawOvenC()})
		if a.believed == nil {
			continue
		}
		a.journey = v.journeyOf(a)
		a.believed = a.believed.Again(a.journey)
		if err := v.coverAgain(ctx, a); err != nil {
			return err
		}
		a.live = v.liveWay(a)
	}
	return nil
}

// noteCoolOven says of a raw piece in an oven that is too cool for it how hot it must be.
func (v *Revision) noteCoolOven(a *liveBatch, add func(schedule.Finding)) {
	if a.cool == 0 || a.condemned {
		return
	}
	name, is, least := a.batch.It.Dish.Name, v.day.Grate(a.cool), v.day.Grate(a.rawOvenC())
	add(about(a, schedule.CoolOven, fmt.Sprintf("%s: set the oven to %s now, in a rimmed pan, and log it (to-oven). %s is no oven for raw meat: below %s inside it needs %s or more, and an oven below %s takes finished food only. The times below are for %s from now on. Measure its coldest place within the hour.",
		name, least, is, v.day.Core(a.leastC()), least, v.day.Grate(safety.LowHeatC), least)))
}
