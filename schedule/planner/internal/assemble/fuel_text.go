package assemble

import (
	"fmt"
	"strings"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/fire"
	"example.com/cookday/schedule/internal/say"
	"example.com/cookday/schedule/unit"
)

// layText, litText and amountText say amounts of fuel in the cook's measure.
func (d *Assembler) layText(b *schedule.Burn) string {
	if b == nil {
		return "as the grill's maker says"
	}
	text := countText(d.Req.Units, b.Lay, b.LayKg)
	if b.Rows != "" {
		text += fmt.Sprintf(" in rows %s along %s of the edge", b.Rows, d.Req.Units.Length(unit.Length(b.ArcM)))
	}
	if b.Light > 0 && b.Light < b.Lay {
		text += fmt.Sprintf(", %d of them kept back for the chimney", b.Light)
	}
	return text
}

// chunksOnTop says where the wood goes on a fire that is laid, once it was said how.
func chunksOnTop(b *schedule.Burn) string {
	switch {
	case b == nil || b.Chunks == 0:
		return ""
	case b.Chunks == 1:
		return " The chunk of wood goes on top, where the lit coals will go."
	}
	return fmt.Sprintf(" The %d chunks of wood go on top, one of them where the lit coals will go.", b.Chunks)
}

// burnAllLit says that every coal of a fire is lit in the chimney, and none is laid.
func burnAllLit(b *schedule.Burn) bool { return b != nil && b.LightKg > 0.99*b.LayKg }

// chimneyLayText says what is made ready for a fire of which every coal is lit first.
func (d *Assembler) chimneyLayText(b *schedule.Burn) string {
	text := countText(d.Req.Units, b.Lay, b.LayKg) + " into the chimney"
	if quarters(b.Chimneys) > oneChimney {
		text = countText(d.Req.Units, b.Lay, b.LayKg) + " into the chimneys"
	}
	if b.Chunks > 0 {
		text += ", " + say.Plural(b.Chunks, "chunk") + " of wood at hand"
	}
	return text
}

func (d *Assembler) litText(b *schedule.Burn) string {
	if b == nil {
		return "the coals"
	}
	if b.Light > 0 && b.Light < b.Lay {
		return inChimney(say.Plural(b.Light, "briquette"), b.Chimneys)
	}
	return inChimney(countText(d.Req.Units, b.Light, b.LightKg), b.Chimneys)
}

func (d *Assembler) amountText(a fire.Amount) string {
	return inChimney(countText(d.Req.Units, a.Count, a.MassKg), a.ChimneyFills)
}

// inChimney adds how full that makes a chimney; a few pieces simply go into one.
func inChimney(amount string, fills float64) string {
	if quarters(fills) <= 0 {
		return amount + " in the chimney"
	}
	return amount + " (" + chimneyText(fills) + ")"
}

// fewerText says how few are enough if the bed still glows.
func (d *Assembler) fewerText(c fire.Change) string {
	if c.AddAtLeast.MassKg > c.Add.MassKg*0.8 || c.AddAtLeast.MassKg <= 0 {
		return ""
	}
	return "; " + strings.TrimSuffix(countText(d.Req.Units, c.AddAtLeast.Count, c.AddAtLeast.MassKg), " briquettes") + " if the bed still glows well"
}

// countText is whole briquettes, to five above twenty, or a mass of lump.
func countText(u unit.System, count int, kg float64) string {
	switch {
	case count == 0:
		return say.Mass(u, kg) + " of lump"
	case count > 20:
		return fmt.Sprintf("%d briquettes", (count+4)/5*5)
	}
	return say.Plural(count, "briquette")
}

// oneChimney is how many quarters of a fill still go into one chimney, heaped.
const oneChimney = 5

func quarters(fills float64) int { return int(fills*4 + 0.5) }

// chimneyText is a fill to the quarter, of a six-quart chimney.
func chimneyText(fills float64) string {
	switch q := quarters(fills); {
	case q == 1:
		return "a quarter chimney"
	case q == 2:
		return "half a chimney"
	case q == 3:
		return "three quarters of a chimney"
	case q <= oneChimney:
		return "a full chimney"
	default:
		return fmt.Sprintf("%d chimney fills", (q+3)/4)
	}
}

// woodText is the wood of a fire that is made of the one before.
func (d *Assembler) woodText(b *schedule.Burn) string {
	if b == nil || b.Chunks == 0 {
		return ""
	}
	return " " + say.Plural(b.Chunks, "chunk") + " of wood on top."
}
