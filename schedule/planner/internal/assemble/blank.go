package assemble

import (
	"example.com/cookday/schedule"
	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/internal/plans"
)

// BlankPlan carries what every plan says, feasible or not.
func (d *Assembler) BlankPlan() schedule.Plan {
	h := plans.Hash(d.Req)
	return schedule.Plan{
		Format: 1, ID: plans.ID(d.Req, h), Name: d.Req.Name, ServeAt: d.End, TZ: d.Req.Serve.TZ, Units: string(d.Req.Units),
		Chance: schedule.Chance{Asked: d.Req.Confidence},
		Dishes: []schedule.DishPlan{}, Phases: []schedule.Phase{}, Steps: []schedule.Step{}, Findings: []schedule.Finding{}, Remedies: []schedule.Remedy{}, Cautions: []schedule.Caution{},
		Provenance: schedule.Provenance{Catalogue: cut.Version, Model: ModelVersion, RequestHash: h},
		Request:    d.Req,
	}
}

// ModelVersion changes whenever the same request may give other times: 1 was fitted on
// charts and told times, 2 on cooks' logs as well; 3 puts what nothing keeps long enough on
// when it is likeliest to be both in time and still good; 4 begins before dawn rather than burn a
// fire that nobody watches, and spares fires that would be lit anew; 5 numbers batches in the order
// in which they go on; 6 keeps the reserve of a seared piece for after its sear, chills what is
// cooked ahead by its own clock, and lays what burns over the coals beside them; 7 lays a fuse that lasts a
// night, and starts upright smokers and drums earlier, under other vents.
const ModelVersion = "7"

// Menu is what a plan says of its dishes before any of them is placed.
func (d *Assembler) Menu() []schedule.DishPlan {
	var all []schedule.DishPlan
	for _, it := range d.Items {
		all = append(all, schedule.DishPlan{
			ID: it.Dish.ID, Name: it.Dish.Name, Cut: it.Cut.Name, Count: it.Dish.Count, ServeAt: d.At(float64(it.Serve)),
			TargetC: it.TargetC, Doneness: it.Doneness, MinimumC: it.Verdict.Minimum.CoreC, Batches: []schedule.Batch{},
		})
	}
	return all
}
