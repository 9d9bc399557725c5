package schedule
import ("testing";"os";"context";"fmt";"time")
func TestScratchT(t *testing.T){ f:=os.Getenv("REQ"); if f==""{t.Skip()}
 b,_:=os.ReadFile(f); r,_:=Read(b)
 for _,e:=range []effort{{},{noClash:true},{budget:600,noClash:true}} { t0:=time.Now(); p,_:=makePlan(context.Background(),r,e); fmt.Println(e,time.Since(t0),p.Feasible,p.Solution.Nodes,p.Solution.Status) } }
