package safety

// What a fire must keep to that burns while people sleep. None of it is published: it is
// the practice of careful cooks.
const (
	// UnwatchedMostC is the hottest such a fire may be, 300 F: its alarm is at 325 F.
	UnwatchedMostC = (300.0-32)*5/9 + printedToleranceK
	// UnwatchedWindMS is the wind at which none is lit, 10 mph.
	UnwatchedWindMS = 10 * 0.44704
	// VentsStillMinutes is how long before sleep the vents stay as they are.
	VentsStillMinutes = 30
	// A grate that nobody watches calls at these heats.
	AlarmLowC, AlarmHighC = (200.0 - 32) / 1.8, (325.0 - 32) / 1.8
	// SettleMinutes is how long before sleep such a fire is left to settle: in that time none is
	// lit, fed or changed; nothing goes on over it in the last VentsStillMinutes (judgment).
	SettleMinutes = 45
)

// SleepCheck is one thing to see to before people sleep beside a fire.
type SleepCheck struct{ Code, Sentence string }

// SleepChecks are all of them, in the order in which a cook sees to them.
func SleepChecks() []SleepCheck {
	return []SleepCheck{
		{"clear", "10 ft (3 m) clear all round: nothing that burns, no wall, no window."},
		{"wind", "Wind under 10 mph (16 km/h) in the forecast, all night."},
		{"burn-ban", "No burn ban."},
		{"grate-alarm", "Grate alarms at 200 and 325 °F (93 and 163 °C)."},
		{"core-alarm", "A core alarm in the meat."},
		{"monoxide-alarm", "A carbon monoxide alarm works in the house."},
		{"vents", "No vent was moved in the last 30 min."},
	}
}

// BeforeEaten is said of a way of waiting that ends before the food is eaten.
const BeforeEaten = "that is before you eat"

// WakingCheck is the first thing to do after a night beside a fire.
const WakingCheck = "Read the grate first, then the core."
