package day

// byTheBend says whether a dish is done by time and by the bend.
func (it *Item) ByTheBend() bool {
	return it.Cut.TenderMinutes[1] > 0 && it.Dish.Target == nil && it.Dish.Finish == ""
}
