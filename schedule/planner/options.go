package planner

import (
	"strings"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/check"
	"example.com/cookday/schedule/planner/internal/ahead"
)

// Option changes how a plan is made.
type Option func(*options)

type options struct {
	judged    bool
	nodes     int       // of the search; 0 for the usual ones and remedies
	notBefore time.Time // zero for no such instant
	chill     bool      // what is done is chilled: the day before another
}

// Judged has the finished plan judged by [check.Plan]. A plan of [Make] that is not
// sound is a fault of this program: it comes back with an [*UnsoundError]. One of
// [Revise] gets a finding that says so before all others, for food is on the fire and
// most often an entry of the log is to blame.
func Judged() Option { return func(o *options) { o.judged = true } }

// Cheaply gives the search so many nodes and looks for no remedies.
func Cheaply(nodes int) Option { return func(o *options) { o.nodes = nodes } }

// UnsoundError is a plan of this program that breaks what every plan promises.
type UnsoundError struct{ Faults []schedule.Fault }

// Error gives the faults one a line, after a line that says what they are.
func (e *UnsoundError) Error() string {
	lines := []string{"this program made a plan that does not hold together: keep to the last one and to the thermometer, and report this"}
	for _, f := range e.Faults {
		lines = append(lines, f.String())
	}
	return strings.Join(lines, "\n")
}

func optionsOf(all []Option) options {
	var o options
	for _, set := range all {
		set(&o)
	}
	return o
}

func (o options) effort() ahead.Effort {
	e := ahead.FullEffort()
	if o.nodes > 0 {
		e.Nodes, e.Allowance = o.nodes, nil
	}
	return e
}

// judge is what is wrong with a finished plan, if that is asked for.
func (o options) judge(p schedule.Plan) []schedule.Fault {
	if !o.judged {
		return nil
	}
	return check.Plan(p)
}
