package remedy

import (
	"slices"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/internal/instant"
	"example.com/cookday/schedule/planner/internal/arrange"
	"example.com/cookday/schedule/unit"
)

// heat is a hotter grate, any other one, the other side of the grate, or no sear.
func (d dishChange) heat() []change {
	var out []change
	u := d.r.Units
	if l := d.dish.Level; l != nil {
		if hot := unit.FromFahrenheit(275); d.cut.Style == cut.Tough && *l < hot-1 {
			out = append(out, d.make(codeHotter, "Cook {dish} at "+u.Grate(hot)+".", "a hotter grate, a firmer bark", 15, "level", hot))
		}
		out = append(out, d.make("other-heat", "{dish}: cook at another heat than "+u.Grate(*l)+".", "not the heat you asked for", 16, "level", nil))
	}
	if d.dish.Zone != "" {
		out = append(out, d.make("other-side", "{dish}: either side of the grate will do.", "not the side you asked for", 13, "zone", nil))
	}
	if d.r.FinishOf(d.dish) != "" {
		out = append(out, d.make("no-sear", "{dish}: skip the sear, or do it in a hot pan.", "no crust from the coals", 19, "finish", schedule.FinishNone))
	}
	if flat, ok := cut.Find(d.cut.Name + "-spatchcock"); ok && d.cut.Style == cut.Bird {
		out = append(out, d.make("flatten", "{dish}: cut the backbone out and cook flat.", "no whole bird on the table", 21, "cut", flat.Name))
	}
	return out
}

// wrapEarlyF is from where a wrap saves the most time without drowning the bark
// (common practice, no source).
const wrapEarlyF = 150

// wrap is a wrap where none was wanted, or an earlier one.
func (d dishChange) wrap() []change {
	w, from := d.dish.Wrap, unit.FromFahrenheit(wrapEarlyF)
	if d.cut.Style != cut.Tough || !d.cut.WrapAllowed || w == nil || w.From != nil && *w.From <= from && w.With == schedule.WrapFoil {
		return nil
	}
	early := schedule.Wrap{With: schedule.WrapFoil, From: &from}
	return []change{d.make(codeWrap, "Wrap {dish} in foil from "+d.r.Units.Core(from)+".", "a softer bark", 12, "wrap", early)}
}

// waits are any way of holding, and a shorter rest.
func (d dishChange) waits() []change {
	var out []change
	if len(d.dish.Hold) > 0 && d.t.Over(arrange.RuleHold) {
		out = append(out, holdChange(d.r, d.dish))
	}
	if rest := d.dish.Rest; rest != nil && instant.UnitMinutes(*rest) > d.cut.Rest.MinMinutes {
		out = append(out, d.make("shorter-rest", "Rest {dish} "+d.r.Units.About(instant.Minutes(d.cut.Rest.MinMinutes))+" at least.", "a shorter rest than you asked for", 14, "rest", nil))
	}
	return out
}

// holdChange allows any way of holding that suits a dish.
func holdChange(r schedule.Request, dish schedule.Dish) change {
	i := slices.IndexFunc(r.Dishes, func(o schedule.Dish) bool { return o.ID == dish.ID })
	d := dishChange{r: r, i: i, dish: dish}
	where := "in a cooler with towels"
	if r.Oven != nil {
		where += " or in the oven"
	}
	return d.make("hold", "Hold {dish} "+where+".", "the meat holds longer", 11, "hold", nil)
}
