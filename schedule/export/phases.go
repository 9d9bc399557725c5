package export

import (
	"time"

	"example.com/cookday/schedule"
)

// A day has parts, which a cook calls by what it is mostly about. They follow each other as
// the steps do, so that a sheet under these headings is still read from top to bottom.
const (
	partBefore  = "Before the day"
	partFireUp  = "Fire up"
	partLong    = "The long cook"
	partShort   = "On the grill"
	partNight   = "The night"
	partMorning = "In the morning"
	partChange  = "Change the fire"
	partFinish  = "The finish"
	partChill   = "Chill it"
	partTable   = "To the table"
)

// longCook is how long a fire burns that cooks for long (assumption).
const longCook = 3 * time.Hour

// carvesWithin is how long before the table the knife opens its part of the day
// (assumption).
const carvesWithin = 30 * time.Minute

// parts are the parts of the day that the steps belong to, one for each in their order.
func (v *view) parts() []string {
	out := make([]string, len(v.Steps))
	lit, table := v.firstFire(), v.atTable()
	part := partBefore
	for i, s := range v.Steps {
		switch kind := s.Kind; {
		case table[i] != "":
			part = table[i]
		case i < lit: // of the evening before, or while the fire is laid
			if v.sameDay(s.At, v.Steps[lit].At) {
				part = partFireUp
			}
		case kind == schedule.StepLayFire:
			part = partFireUp
		case kind == schedule.StepBeforeSleep, kind == schedule.StepCheckOven && part != partNight:
			part = partNight
		case kind == schedule.StepWaking, kind == schedule.StepCheckOven:
			part = partMorning
		case v.changesFire(s, part):
			part = partChange
		case kind == schedule.StepLight && (part == partBefore || part == partTable || part == partChill):
			part = partFireUp
		case goesOn(kind), i > 0 && v.Steps[i-1].Kind == schedule.StepFireReady:
			part = v.cooksIn(s, part)
		}
		out[i] = part
	}
	return out
}

// firstFire is the place of the first step that is about a fire, or of what goes on without.
func (v *view) firstFire() int {
	for i, s := range v.Steps {
		switch s.Kind {
		case schedule.StepLayFire, schedule.StepLight, schedule.StepFireReady, schedule.StepPutOn:
			return i
		}
	}
	return len(v.Steps) - 1
}

// atTable says of each step in which part of bringing food to the table it lies, "" where in none:
// from the first knife before a serving until the fire is seen to again.
func (v *view) atTable() []string {
	out := make([]string, len(v.Steps))
	for i, s := range v.Steps {
		if s.Kind != schedule.StepServe && s.Kind != schedule.StepChill {
			continue
		}
		part := partTable
		if v.kind(s) == "chill" {
			part = partChill
		}
		first := i
		for k := i - 1; k >= 0 && s.At.Sub(v.Steps[k].At) <= carvesWithin; k-- {
			if v.Steps[k].Kind == schedule.StepSlice {
				first = k
			}
		}
		last := i
		for last+1 < len(v.Steps) && !v.begins(v.Steps[last+1]) {
			last++
		}
		for k := first; k <= last; k++ {
			out[k] = part
		}
	}
	return out
}

// begins says whether a step begins another part of the day after a meal.
func (v *view) begins(s schedule.Step) bool {
	switch s.Kind {
	case schedule.StepTakeOut, schedule.StepThaw, schedule.StepSalt, schedule.StepLayFire, schedule.StepLight, schedule.StepChangeFire, schedule.StepBeforeSleep,
		schedule.StepWaking, schedule.StepCheckOven, schedule.StepCheckFire, schedule.StepRefuel, schedule.StepTakeOff:
		return true
	}
	return goesOn(s.Kind)
}

func goesOn(kind schedule.StepKind) bool {
	return kind == schedule.StepPutOn || kind == schedule.StepSear
}

// changesFire says whether a step is of a fire that is made of the one before.
func (v *view) changesFire(s schedule.Step, part string) bool {
	if s.Phase < 2 || part == partTable || s.Phase > len(v.Phases) || v.Phases[s.Phase-1].Relit {
		return false
	}
	return s.Kind == schedule.StepChangeFire || s.Kind == schedule.StepLight && s.At.Before(v.Phases[s.Phase-1].SetupFrom)
}

// cooksIn is the part that begins as food goes on, or as its fire is ready.
func (v *view) cooksIn(s schedule.Step, part string) string {
	switch part {
	case partLong, partShort, partFinish, partNight, partMorning:
		return part
	}
	f, burns := v.phaseAt(s.At)
	switch {
	case burns && f.To.Sub(s.At) >= longCook:
		return partLong
	case burns && f.Number > 1 && f.Number == len(v.Phases) && !f.Relit:
		return partFinish
	}
	return partShort
}

// phaseAt is the fire that burns at an instant.
func (v *view) phaseAt(t time.Time) (schedule.Phase, bool) {
	for _, f := range v.Phases {
		if !t.Before(f.From) && t.Before(f.To) {
			return f, true
		}
	}
	return schedule.Phase{}, false
}

// opens is the heading to set before an entry: the name of its part of the day where that
// is another than the entry's before, on a sheet of more than one part.
func (d day) opens(i int) string {
	part := d.entries[i].part
	if part == "" || i > 0 && d.entries[i-1].part == part {
		return ""
	}
	return part
}

// inParts says in each entry which part of the day it is in; a remark goes with what was before on its day.
func (v *view) inParts(entries []entry) {
	names := map[string]string{}
	for i, part := range v.parts() {
		names[v.Steps[i].ID] = part
	}
	for i := range entries {
		switch e := &entries[i]; {
		case e.remark == "":
			e.part = names[e.step.ID]
		case i > 0 && v.sameDay(entries[i-1].at, e.at):
			e.part = entries[i-1].part
		}
	}
	for i := len(entries) - 2; i >= 0; i-- {
		if entries[i].part == "" {
			entries[i].part = entries[i+1].part
		}
	}
}
