package schedule

import ("testing";"os";"context";"fmt";"encoding/json";"time")

func TestScratch(t *testing.T) {
	f := os.Getenv("REQ"); if f == "" { t.Skip() }
	b, _ := os.ReadFile(f)
	r, err := Read(b); if err != nil { t.Fatal(err) }
	t0 := time.Now()
	p, err := Make(context.Background(), r); if err != nil { t.Fatal(err) }
	fmt.Println(time.Since(t0), p.Feasible, p.Solution, p.Chance)
	for _, d := range p.Dishes { fmt.Println(d.Name, d.Way, d.Chance); for _, b := range d.Batches { for _, s := range b.Stages { fmt.Println("   ", s.Kind, s.From.Format("Mon 15:04"), s.To.Format("Mon 15:04"), s.Minutes, s.Place, s.Zone, s.Phase) } } }
	for _, s := range p.Steps { fmt.Println(s.At.Format("Mon 15:04"), s.Kind, s.Text, "|", s.Why) }
	for _, f := range p.Findings { fmt.Println("FINDING", f.Code, f.Text) }
	for _, r := range p.Remedies { fmt.Println("REMEDY", r.Code, r.Text, r.Price, r.Chance, r.Cost) }
	if os.Getenv("JSON") != "" { j, _ := json.MarshalIndent(p, "", " "); fmt.Println(string(j)) }
}
