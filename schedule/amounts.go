package schedule

import (
	"fmt"
	"math"

	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/internal/strict"
	"example.com/cookday/schedule/unit"
)

// A child eats half of what an adult does (assumption; common practice, no source).
const childShare = 0.5

// Eaters is the guests in adults.
func (g Guests) Eaters() float64 { return float64(g.Adults) + childShare*float64(g.Children) }

// Amount is how much of a cut to buy for a head count.
type Amount struct {
	Cut       string  `json:"cut"`
	Title     string  `json:"title"`
	Eaters    float64 `json:"eaters"`  // adults that it is reckoned for; a child is half of one
	MassKg    float64 `json:"mass_kg"` // raw, all pieces together
	Count     int     `json:"count"`
	PieceKg   float64 `json:"piece_kg"`   // of one piece
	ServingKg float64 `json:"serving_kg"` // raw, of one adult (common practice, no source)
	CookedKg  float64 `json:"cooked_kg"`  // on the table: less drip, vapour and bone
}

// Amounts suggests weights for a head count. Several meats share the guests evenly,
// for people take some of each; every side is reckoned for all. Pieces are rounded
// up. No guests, no cuts or an unknown cut are an [*InputError].
func Amounts(guests Guests, cuts []string) ([]Amount, error) {
	var faults strict.FaultList
	eaters := guests.Eaters()
	if guests.Adults < 0 || guests.Children < 0 || eaters <= 0 {
		faults.Add("guests", "there are %d adults and %d children; at least one guest eats", guests.Adults, guests.Children)
	}
	if len(cuts) == 0 {
		faults.Add("cuts", "there are none; name one or more cuts of the catalogue, such as brisket")
	}
	var found []cut.Cut
	mains := 0
	for i, name := range cuts {
		c, unknown := cut.One(name)
		if unknown != "" {
			faults.Add(strict.ItemPath("cuts", i), "%s", unknown)
			continue
		}
		if c.IsMain() {
			mains++
		}
		found = append(found, c)
	}
	if err := inputError(&faults); err != nil {
		return nil, err
	}
	out := make([]Amount, len(found))
	for i, c := range found {
		share := eaters
		if c.IsMain() {
			share /= float64(mains)
		}
		out[i] = amountOf(c, share)
	}
	return out, nil
}

// amountOf is what so many adults eat of one cut, in pieces of about the usual weight.
func amountOf(c cut.Cut, eaters float64) Amount {
	need := eaters * c.ServingKg
	a := Amount{Cut: c.Name, Title: c.Title, Eaters: eaters, ServingKg: c.ServingKg}
	if c.Quick() {
		a.Count, a.PieceKg = int(math.Ceil(need/c.Typical-1e-9)), c.Typical
	} else {
		a.Count = max(int(math.Round(need/c.Typical)), 1)
		if most := int(math.Ceil(need / c.MaxPieceKg)); a.Count < most {
			a.Count = most
		}
		a.PieceKg = math.Max(math.Ceil(need/float64(a.Count)*20-1e-9)/20, math.Max(c.MinPieceKg, c.SmallestKg)) // up to 50 g
	}
	a.MassKg = float64(a.Count) * a.PieceKg
	a.CookedKg = a.MassKg * (1 - c.LossFraction)
	return a
}

// Text says an amount in the cook's units.
func (a Amount) Text(u unit.System) string {
	raw, cooked := u.Mass(unit.Mass(a.MassKg)), u.Mass(unit.Mass(a.CookedKg))
	if a.Count == 1 {
		return fmt.Sprintf("%s: %s raw, %s cooked", a.Title, raw, cooked)
	}
	return fmt.Sprintf("%s: %d × %s (%s raw, %s cooked)", a.Title, a.Count, u.Mass(unit.Mass(a.PieceKg)), raw, cooked)
}
