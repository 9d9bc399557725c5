// Command backyard-party plans the party of request.yaml with the library and says
// between when and when each dish comes off the grate, and how sure all of it is.
package main

import (
	"context"
	_ "embed"
	"fmt"
	"log"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/planner"
)

//go:embed request.yaml
var request []byte

func main() {
	r, err := schedule.Read(request)
	if err != nil {
		log.Fatal(err) // every fault of the request, one a line
	}
	p, err := planner.Make(context.Background(), r, planner.Judged()) // judged: a plan that breaks a rule is an error
	if err != nil {
		log.Fatal(err)
	}
	if !p.Feasible { // a day that cannot be done is no error: the plan says why, and what would help
		for _, f := range p.Findings {
			fmt.Println(f.Text)
		}
		for _, rem := range p.Remedies {
			fmt.Printf("%s (%s)\n", rem.Text, rem.Price)
		}
		return
	}
	for _, d := range p.Dishes {
		if off, ok := d.Batches[0].Milestone(schedule.MilestoneTakeOff); ok {
			fmt.Printf("%-9s comes off between %s and %s\n", d.Name, about(off.Window.Early), about(off.Window.Late))
		}
	}
	fmt.Printf("All is ready at %s with a chance of %.0f%%.\n", about(p.ServeAt), 100*p.Chance.All)
}

// about rounds to five minutes, which is finer than a fire can be foreseen and the
// same on every processor.
func about(t time.Time) string { return t.Round(5 * time.Minute).Format("Mon 15:04") }
