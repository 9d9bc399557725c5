package schedule
import ("testing";"context";"fmt";"os")
func TestScratchF(t *testing.T){ if os.Getenv("FC")=="" {t.Skip()}
 for _, f := range []map[string]string{
  {"cut":"spare-ribs","weight":"3.25 lb","grate":"237 F"},{"cut":"baby-backs","weight":"2.25 lb","grate":"237 F"},{"cut":"baby-backs","weight":"2.25 lb","grate":"275 F"},{"cut":"spare-ribs","weight":"3.25 lb","grate":"225 F"},
 } { q,err:=ReadInquiry(f); if err!=nil{fmt.Println(err);continue}; o,err:=Forecast(context.Background(),q); fmt.Println(f,o.Reaches,o.Way,o.Reason,err); for _,m:=range o.Milestones { fmt.Printf("   %+v\n",m)}; for _,x:=range o.Findings{fmt.Println(x)} } }
