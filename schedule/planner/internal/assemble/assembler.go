package assemble

import (
	"slices"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/planner/internal/arrange"
	"example.com/cookday/schedule/planner/internal/day"
)

// Assembler writes one plan of an arranged day: its instants, its charcoal, its steps
// and sentences. What the cook must know is gathered on the way.
type Assembler struct {
	*arrange.Arranger
	findings day.Findings
	Now      time.Time // of a revision; zero for a first plan
}

// New is an assembler that begins with what is known before anything is arranged.
func New(a *arrange.Arranger, known ...schedule.Finding) *Assembler {
	d := &Assembler{Arranger: a}
	for _, f := range slices.Concat(a.CoolZones(), a.LoweredTargets(), known) {
		d.findings.Add(f)
	}
	return d
}

// find notes a finding of a dish, or of the day where it is nil.
func (d *Assembler) find(code, path string, it *day.Item, text string) {
	d.findings.Add(day.Finding(code, path, it, text))
}
