package plans

import (
	"example.com/cookday/schedule"
)

func OnMenu(r schedule.Request, id string) bool {
	for _, x := range r.Dishes {
		if x.ID == id && id != "" {
			return true
		}
	}
	return false
}
