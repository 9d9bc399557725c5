package check

import (
	"fmt"
	"time"

	"example.com/cookday/schedule"
)

// Plan looks whether a plan keeps what every plan promises, and returns what it
// does not keep, with JSON paths of the plan; a sound plan gives nothing. It works
// the invariants out again from the plan, the request in it, the catalogue and the
// rules of fire and safety, and uses nothing of what made the plan: a fault of the
// planner does not hide itself. Every sentence begins with the name of its rule.
//
// In a revised plan what is done is done: the rules on the past pass it over.
func Plan(p schedule.Plan) []schedule.Fault {
	c := checker{plan: &p}
	if c.learn(); len(c.faults) > 0 {
		return c.faults
	}
	for _, r := range checkRules {
		if r.feasible && !p.Feasible {
			continue
		}
		c.rule = r.name
		r.look(&c)
	}
	return c.faults
}

// checkRule is one invariant of a plan.
type checkRule struct {
	name     string
	feasible bool // concerns feasible plans only
	look     func(*checker)
}

// checkRules are all rules, in the order in which their faults are reported.
var checkRules = []checkRule{
	{"format", false, (*checker).format},
	{"provenance", false, (*checker).provenance},
	{"finite", false, (*checker).finite},
	{"instants", false, (*checker).instants},
	{"windows", false, (*checker).windows},
	{"serving", false, (*checker).serving},
	{"infeasible", false, (*checker).infeasible},
	{"solution", false, (*checker).solution},
	{"findings", false, (*checker).findings},
	{"remedies", false, (*checker).remedies},
	{"cautions", false, (*checker).cautions},
	{"target", false, (*checker).targets},
	{"pieces", true, (*checker).pieces},
	{"phases", true, (*checker).phases},
	{"zones", true, (*checker).zones},
	{"fuel", true, (*checker).fuel},
	{"untended", true, (*checker).untended},
	{"stages", true, (*checker).stages},
	{"seared", true, (*checker).seared},
	{"place", true, (*checker).places},
	{"birds", true, (*checker).birds},
	{"asked", true, (*checker).asked},
	{"oven", true, (*checker).oven},
	{"one-oven", true, (*checker).oneOven},
	{"room", true, (*checker).room},
	{"levels", true, (*checker).levels},
	{"spots", true, (*checker).spots},
	{"rest", true, (*checker).rest},
	{"hold", true, (*checker).hold},
	{"good-until", true, (*checker).goodUntil},
	{"overnight", true, (*checker).overnight},
	{"box", true, (*checker).boxes},
	{"minutes", true, (*checker).stageMinutes},
	{"milestones", true, (*checker).milestones},
	{"curve", true, (*checker).curves},
	{"chance", true, (*checker).chances},
	{"odds", true, (*checker).odds},
	{"earliest", true, (*checker).earliest},
	{"quiet", true, (*checker).quiet},
	{"thaw", true, (*checker).thaw},
	{"chilling", true, (*checker).chilling},
	{"night", true, (*checker).night},
	{"unwatched", true, (*checker).unwatched},
	{"quiet-chance", true, (*checker).quietChance},
	{"hands", true, (*checker).hands},
	{"steps", true, (*checker).steps},
	{"acts", true, (*checker).acts},
	{"order", true, (*checker).order},
	{"tended", true, (*checker).tended},
	{"orders", true, (*checker).orders},
	{"storm", true, (*checker).storm},
	{"undone", true, (*checker).undone},
	{"past", true, (*checker).past},
	{"shown", true, (*checker).shown},
	{"kept", true, (*checker).kept},
}

// checker gathers the faults of one plan.
type checker struct {
	plan   *schedule.Plan
	facts  facts
	rule   string
	faults []schedule.Fault
}

// fault files one, led by the name of the rule.
func (c *checker) fault(path, format string, args ...any) {
	c.faults = append(c.faults, schedule.Fault{Path: path, Sentence: c.rule + ": " + fmt.Sprintf(format, args...)})
}

// found says whether the plan has a finding of a code, on a dish if one is named.
func (c *checker) found(code, dish string) bool {
	for _, f := range c.plan.Findings {
		if f.Code == code && (dish == "" || containsID(f.Dishes, dish)) {
			return true
		}
	}
	return false
}

// condemned says whether a revision says that a dish must not be served.
func (c *checker) condemned(dish string) bool {
	for _, f := range c.plan.Findings {
		if c.plan.Revision > 0 && f.Severity == schedule.Danger && containsID(f.Dishes, dish) {
			return true
		}
	}
	return false
}

// unshown says whether a revision has a dish measured before anything else is done with it.
func (c *checker) unshown(dish string) bool {
	return c.plan.Revision > 0 && c.found(schedule.OffUnread, dish)
}

// done says whether a step of the past stands for an act, so that rules on what
// is still to be planned pass it over.
func (c *checker) done(kind schedule.StepKind, dish string, batch, phase int) bool {
	for _, s := range c.plan.Steps {
		if s.Done && s.Kind == kind && s.Dish == dish && (dish == "" || s.Batch == batch) && (dish != "" || s.Phase == phase) {
			return true
		}
	}
	return false
}

func containsID(ids []string, id string) bool {
	for _, o := range ids {
		if o == id {
			return true
		}
	}
	return false
}

// told is an instant as a fault says it.
func told(t time.Time) string { return t.Format("2006-01-02 15:04") }

// minutesBetween is the time from a to b.
func minutesBetween(a, b time.Time) float64 { return b.Sub(a).Minutes() }

// halfMinute is what the rounding of an instant to the minute may hide; two
// rounded instants may hide a whole one.
const (
	halfMinute  = 0.5 + 1e-6
	wholeMinute = 1 + 1e-6
)
