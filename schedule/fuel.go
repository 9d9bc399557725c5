package schedule

import (
	"example.com/cookday/schedule/internal/fire"
)

// noteTexts says what the codes of the fire mean.
var noteTexts = map[fire.Note]string{
	fire.SizeOutsideLaw: "The grill is smaller than 14 in or larger than 27 in: the fuel figures are stretched beyond what they were compared with.",
	fire.LevelOutside:   "The layout is not made for this grate temperature: watch it closely.",
	fire.RingRunsCool:   "Even the thickest ring gives too little heat for this level on this day: bank the coals instead.",
	fire.LumpUneven:     "Lump burns a ring unevenly: close gaps as they show.",
	fire.NeedsBasket:    "This is more fuel than a loose pile holds: use a basket or bricks to keep it together.",
	fire.ThinAir:        "The air is thin at this height: the vents want to be a little wider.",
	fire.FillsNotLaw:    "At searing heat fuel is counted in chimney fills of 45 to 60 minutes each.",
}
