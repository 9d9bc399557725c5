package arrange

import (
	"example.com/cookday/schedule/planner/internal/sequence"
)

// FullAllowance is what all searches for one answer may spend together, in nodes of a
// small day: the plan, the day before, the reasons of a clash and every remedy. It
// bounds the cost of the worst request; ordinary days spend a few hundredths of it.
const FullAllowance = 120_000

// A node takes longer with many batches, and before the first one every sequence of
// fires is laid out for every batch. Measured on days of 3 to 24 unlike batches; the
// figures are rounded.
const (
	batchesANode = 12 // so many more batches make a node once more as dear
	layoutNodes  = 20 // of laying out one batch for one fire
)

// Allowance is what is left of that; nil is without end.
type Allowance struct{ left int }

// NewAllowance is one of so many nodes.
func NewAllowance(nodes int) *Allowance { return &Allowance{left: nodes} }

// NodesFor is the nodes that a search of a problem may open.
func (p *Allowance) NodesFor(asked int, q *sequence.Problem) int {
	if asked == 0 {
		asked = sequence.DefaultBudget
	}
	if p == nil {
		return asked
	}
	return max(1, min(asked, (p.left-layout(q))/dearness(q)))
}

// Spend takes what a search has cost.
func (p *Allowance) Spend(nodes int, q *sequence.Problem) {
	if p != nil {
		p.left -= layout(q) + nodes*dearness(q)
	}
}

// Empty says that no further search is worth its beginning.
func (p *Allowance) Empty() bool { return p.Below(1) }

// Below says whether less than so much is left.
func (p *Allowance) Below(nodes int) bool { return p != nil && p.left < nodes }

func dearness(q *sequence.Problem) int { return 1 + len(q.Chains)/batchesANode }

func layout(q *sequence.Problem) int { return layoutNodes * len(q.Chains) * len(q.Fires) }
