package sequence

// OvenFire stands in Place.Fire for a zone of the oven, which needs no fire.
const OvenFire = -1

// Unattended stands in the hands fields for an instant that needs nobody: it
// takes no hands and may lie in quiet hours.
const Unattended = -1

// NoLimit stands in Task.LagMax and Gap.Max where there is no upper limit.
// Every negative value means the same.
const NoLimit = -1

// DefaultPhases is used where Problem.MaxPhases is 0.
const DefaultPhases = 3

// DefaultBudget is the number of nodes used where Problem.Budget is 0.
const DefaultBudget = 40_000

// Span is the half-open interval [From, To) of instants, in minutes before the
// last serving instant. Larger is earlier, so From is the late end.
type Span struct{ From, To int }

// Fire is one layout of coals at one level of heat.
type Fire struct {
	// Setup is minutes from light until the grate is ready, when this is the
	// first fire of the day. 0 or more.
	Setup int
	// Zones holds the capacity of each zone, cm2. 0 or more.
	Zones []int
	// LightClosed holds instants at which the day may not be lit with this fire
	// as its first, and ChangeClosed those at which a change to this fire may not
	// begin, both besides the quiet hours. They say what follows from the light:
	// where coals are poured m minutes after it, each quiet Span{a, b} bars the
	// lights in Span{a+m, b+m}; where a chimney is lit m minutes before a change
	// begins, it bars the changes in Span{a-m, b-m}. In any order; they may
	// overlap.
	LightClosed, ChangeClosed []Span
}

// Place is one zone in which a mode may cook: zone Zone of fire Fire, or zone
// Zone of the oven where Fire is OvenFire.
type Place struct{ Fire, Zone int }

// Gap bounds the minutes from the end of a chain's last task to its serving
// instant: at least Min, at most Max (negative: no limit); minutes beyond Ideal
// cost Chain.HoldCost each.
type Gap struct{ Min, Ideal, Max int }

// Mode is one way of doing a task.
type Mode struct {
	// Area is what the task takes from its zone, cm2. 0 or more.
	Area int
	// Cost is added to the objective when the mode is chosen. 0 or more.
	Cost int
	// Minutes is the length of the task by the mode of the task before it; one
	// entry for a first task. 0 says: not allowed after that mode.
	Minutes []int
	// Places holds at most one zone for each fire (a mode with places on two or
	// more fires may ride through a change between them), or exactly one zone of
	// the oven.
	Places []Place
	// Closed holds instants at which the task may not start in this mode,
	// besides the quiet hours.
	Closed []Span
	// Gap is read on the last task of a chain only.
	Gap Gap
}

// Task is one stretch of a chain that stays in one zone.
type Task struct {
	// Modes are the ways of doing it; one is chosen.
	Modes []Mode
	// LagMin and LagMax bound the minutes between this task's end and the start
	// of the next one (LagMax negative: no limit). Not read on the last task.
	LagMin, LagMax int
	// StartHands and EndHands are the minutes somebody is busy from the start
	// and from the end on. 0 is attended without taking time; Unattended needs
	// nobody.
	StartHands, EndHands int
}

// Chain is what one batch goes through.
type Chain struct {
	// Serve is the serving instant, minutes before the last serving instant of
	// the day. 0 or more.
	Serve int
	// HoldCost is the cost of one minute of gap beyond Gap.Ideal. 0 or more.
	HoldCost int
	// Group is 0, or the same positive number for identical batches. The plan
	// then finishes the batches of a group in their order; no plan is lost.
	Group int
	// Tasks in the order they are done; at least one.
	Tasks []Task
}

// Problem is one day at one grill. All instants are minutes before the last
// serving instant (larger is earlier), all areas square centimetres.
type Problem struct {
	// Fires that may burn, one at a time.
	Fires []Fire
	// Change[f][g] is minutes from the end of fire f to the readiness of fire g;
	// negative: impossible. A square table; the diagonal is not read.
	Change [][]int
	// Ovens holds the capacity of each oven zone, cm2.
	Ovens []int
	// Chains are the batches of the day.
	Chains []Chain
	// MaxPhases is the greatest number of fires one after another; 0 means
	// DefaultPhases.
	MaxPhases int
	// ChangeCost is the cost of each change of fire, FurtherCost what each of them after
	// the first FewChanges costs on top. Where ChangeCosts is there, a change from fire f
	// to g costs ChangeCosts[f][g] instead.
	ChangeCost, FurtherCost, FewChanges int
	ChangeCosts                         [][]int
	// BurnCost is the cost of a minute from the light to the last serving
	// instant, if a fire is lit at all.
	BurnCost int
	// Quiet holds the intervals in which nothing attended may happen. In any
	// order; they may overlap.
	Quiet []Span
	// IdleMost is how many minutes a fire may burn at the most before something is
	// on it; 0: no limit.
	IdleMost int
	// Earliest is the instant before which nothing starts, the light included.
	Earliest int
	// LightHands and ChangeHands are minutes of hands from the light and from
	// the end of a phase that is followed by another (or Unattended).
	LightHands, ChangeHands int
	// Budget is the number of nodes the search may open, never a time; 0 means
	// DefaultBudget.
	Budget int
	// NoClash leaves Solution.Clash out when the problem is infeasible, for
	// callers that only want to know whether a change of the problem helps.
	NoClash bool
	// Below, if it is not 0, leaves out all plans that cost so much or more: where there is
	// none below it the problem is infeasible.
	Below int
	// FirstPlan ends the search with the first plan it finds, for callers that
	// only want to know whether there is one.
	FirstPlan bool
}
