package loom
import ("testing";"fmt")
func TestTry(t *testing.T){
 for _, s := range []string{"12 dpi","12/in","50/10 cm","40 dents/10 cm","40 dents per 10 cm","12","60 Stockport","60s Stockport","Stockport 60","Bolton 30","30 Bolton reed","12 6-4 counts","40 6-4","1200 Scotch","60 scotch tweed","60 Stokport","60 foo","foo","0 dpi","-3 dpi","1,234 Stockport","10000 dpi","50/10", "50/10 Stockport", "dpi 12","12 in", "7 1/2 dpi", "16s Huddersfield", "", "  ", "60 Stockport 30", "reed", "12 1/3", "30 Manchester"} {
  r, err := ParseReed(s)
  if err!=nil { fmt.Printf("%-20q %v %+v\n", s, err, err); continue }
  fmt.Printf("%-20q %v = %s dpi\n", s, r.Dents.Is, r.Dents.Is.Per(25400000))
 }
}
