package ahead

import (
	"fmt"
	"strings"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/say"
	"example.com/cookday/schedule/planner/internal/day"
)

// menuFindings are what there is to say of a menu before anything is arranged.
func menuFindings(r schedule.Request) []schedule.Finding {
	return append(assumedFindings(r), guestFindings(r)...)
}

// assumedFindings say in one breath what nobody said and the catalogue knows.
func assumedFindings(r schedule.Request) []schedule.Finding {
	var parts, ids []string
	fed := false
	for _, dish := range r.Dishes {
		if len(dish.Assumed) == 0 {
			continue
		}
		piece := say.Mass(r.Units, float64(dish.Weight))
		part := fmt.Sprintf("%s, %s", dish.Name, piece)
		if dish.Count > 1 || dish.Assumes(schedule.AssumedCount) {
			part = fmt.Sprintf("%s, %d of %s", dish.Name, dish.Count, piece)
		}
		fed = fed || dish.Assumes(schedule.AssumedCount)
		parts, ids = append(parts, part), append(ids, dish.ID)
	}
	if len(parts) == 0 {
		return nil
	}
	text := "Assumed, because nobody said: " + strings.Join(parts, "; ")
	if fed {
		text += fmt.Sprintf("; so many for the guests, %s", headCount(*r.Guests))
	}
	f := day.Finding(schedule.CodeAssumed, "dishes", nil, text+". Weigh what you buy and plan again: the hours follow the weight.")
	f.Dishes = ids
	return []schedule.Finding{f}
}
