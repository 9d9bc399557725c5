package sequence

// Status says what is known about a Solution.
type Status int

const (
	// Unknown: the budget ended before any plan was found.
	Unknown Status = iota
	// Optimal: the plan is proven to be of least cost.
	Optimal
	// Feasible: the budget ended; Bound says how much better a plan might be.
	Feasible
	// Infeasible: proven that there is no plan.
	Infeasible
)

// String returns the name of the status in lower case.
func (s Status) String() string {
	return name([]string{"unknown", "optimal", "feasible", "infeasible"}, int(s))
}

// Parts are the terms of the cost.
type Parts struct{ Hold, Mode, Change, Burn int }

// Sum is the whole cost.
func (p Parts) Sum() int { return p.Hold + p.Mode + p.Change + p.Burn }

// Phase is a stretch of time in which one fire burns: [End, Begin). The last
// phase ends at 0.
type Phase struct{ Fire, Begin, End int }

// Placed is a task in the plan: its mode, its instants (Start > End), and the
// phases in which it starts and ends (-1 both: in the oven).
type Placed struct{ Mode, Start, End, FirstPhase, LastPhase int }

// Kind says what holds an instant where it is: why it is not later.
type Kind int

const (
	// ServeRest: the chain's own serving instant and the least gap before it.
	ServeRest Kind = iota
	// NextTask: the next task of the chain (Chain, Task) and the least lag.
	NextTask
	// TaskBefore: the task before it (Chain, Task) is held, and the greatest lag
	// draws this one along.
	TaskBefore
	// ZoneFull: the zone is taken afterwards by Chain, Task.
	ZoneFull
	// FireNotReady: any later and the fire of Phase would not be ready for
	// Chain, Task (or, where Chain is -1, for the change after it).
	FireNotReady
	// HandsBusy: hands are needed afterwards by Chain, Task; where Chain is -1 by
	// the end of phase Phase, and where that is -1 too by the light.
	HandsBusy
	// QuietHours: later instants that would do are in quiet hours.
	QuietHours
	// ClosedHours: later instants that would do are closed to the mode, the light
	// or the change.
	ClosedHours
	// BatchOrder: identical batches finish in their order; Chain, Task is the
	// next one. Only where the plan is not proven: it could be bettered.
	BatchOrder
	// FireIdle: the fire of Phase burns from early on, and any later it would burn
	// for nothing too long.
	FireIdle
	// LastServing: the last phase begins at the last serving instant; nothing
	// needs it earlier.
	LastServing
)

// String returns the kind in words.
func (k Kind) String() string {
	return name([]string{"serve and rest", "next task", "task before", "zone full", "fire not ready",
		"hands busy", "quiet hours", "closed hours", "batch order", "fire idle", "last serving"}, int(k))
}

// Reason is the constraint that is tight at an instant, and the other party to
// it. Fields that do not apply are -1.
type Reason struct {
	Kind Kind
	// Chain and Task of the other party.
	Chain, Task int
	// Phase in question.
	Phase int
	// Zone in question: an index into the zones of the phase's fire, or into
	// Problem.Ovens where Phase is -1.
	Zone int
}

// Rule is a family of constraints that can be let go as a whole.
type Rule int

const (
	// RuleQuiet: nothing attended in quiet hours.
	RuleQuiet Rule = iota
	// RuleClosed: no start in the closed hours of the mode, no light or change in
	// those of the fire.
	RuleClosed
	// RuleHands: one pair of hands.
	RuleHands
	// RuleEarliest: nothing before Problem.Earliest.
	RuleEarliest
	// RuleHold: Gap.Max, the longest gap before serving.
	RuleHold
	// RuleCapacity: the room in each zone.
	RuleCapacity
	// RulePhases: one fire at a time, and the time a fire takes.
	RulePhases
	ruleCount
)

// String returns the rule in words.
func (r Rule) String() string {
	return name([]string{"quiet hours", "closed hours", "hands", "earliest", "hold limit", "capacity", "one fire at a time"}, int(r))
}

// Clash is a set of chains and rules that cannot be had together. Without any
// one member the rest is feasible.
type Clash struct {
	Chains []int
	Rules  []Rule
	// Minimal is false if the budget ended before every member was shown to be
	// needed; the set is infeasible all the same.
	Minimal bool
}

// Solution is the answer of Solve.
type Solution struct {
	Status Status
	// Cost of the plan and its terms.
	Cost  int
	Parts Parts
	// Bound is what no plan can be cheaper than; equal to Cost where Optimal.
	Bound int
	// Nodes opened by the search.
	Nodes int
	// Stopped says why the search ended before a proof; empty where it did not.
	Stopped string
	// Light is the instant of first light; -1 without any fire.
	Light int
	// Phases in the order they burn.
	Phases []Phase
	// Chains holds the tasks of each chain as placed.
	Chains [][]Placed
	// Why holds the reason of each start, WhyLight that of the light.
	Why      [][]Reason
	WhyLight Reason
	// Clash is set where Infeasible, unless Problem.NoClash.
	Clash *Clash
}

func name(names []string, i int) string {
	if i < 0 || i >= len(names) {
		return "?"
	}
	return names[i]
}
