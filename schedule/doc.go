// Package schedule has the words of a cook day on one grill: what a cook asks for
// ([Request]), what comes of it ([Plan]), and what is noted while it goes ([Entry]).
//
// Four calls are enough for most programs:
//
//	r, err := schedule.Read(data)                  // a request, YAML or JSON, every fault at once
//	p, err := planner.Make(ctx, r)                 // its plan
//	log, err := schedule.ReadLog(data, p)          // what was read and done since
//	p, err = planner.Revise(ctx, p, log, now)      // the plan as it stands
//
// A day that cannot be done is no error: [Plan.Feasible] is false, Findings say why, and
// Remedies say what would help; [Request.With] takes one. Package planner also has
// Forecast, for one piece without a schedule. Package export writes a plan as text,
// tables, calendar, pictures and page; package check is the judge: it looks at a
// finished plan without the code that made it.
//
// This package knows what is well formed, and nothing of how plans are made. Values are
// SI with the unit in the name: degC, kg, m, minutes. Nothing here reads a clock, rolls
// dice or touches files: the same build and time-zone data give the same answers.
package schedule
