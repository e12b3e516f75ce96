package yarn

import (
	"slices"
	"strings"
	"testing"

	"sley/internal/trade/problem"
)

var labelTests = []struct {
	text                       string
	name, count, fibre, colour string
	taken                      SystemID
	others, codes              []string
	putUp, wraps               string
	handspun                   bool
}{
	{text: "8/2 cotton", name: "8/2 cotton", count: "8/2 Ne", fibre: "cotton", taken: "cotton"},
	{text: "Nm 16/2 wool, grey", name: "Nm 16/2 wool, grey", count: "16/2 Nm", fibre: "wool", colour: "grey"},
	{text: "cottolin 22/2", name: "cottolin 22/2", count: "22/2 lea", fibre: "cottolin", taken: "lea", others: []string{"22/2 Ne"}},
	{text: "8/2 cottolin", name: "8/2 cottolin", count: "8/2 Ne", fibre: "cottolin", taken: "cotton", others: []string{"8/2 lea"}},
	{text: "2/8 wool", name: "2/8 wool", count: "2/8 Nm", fibre: "wool", taken: "metric", others: []string{"2/8 worsted"}},
	{text: "2/20 worsted", name: "2/20 worsted", count: "2/20 worsted", fibre: "worsted wool", taken: "worsted"},
	{text: "2/24 worsted merino, deep sea", name: "2/24 worsted merino, deep sea", count: "2/24 worsted", fibre: "merino wool", colour: "deep sea", taken: "worsted"},
	{text: "30 tex linen", name: "30 tex linen", count: "30 tex", fibre: "linen"},
	{text: "16/2 linen", name: "16/2 linen", count: "16/2 lea", fibre: "linen", taken: "lea"},
	{text: "16/2 linen lea, natural", name: "16/2 linen lea, natural", count: "16/2 lea", fibre: "linen", colour: "natural"},
	{text: "60/2 silk", name: "60/2 silk", count: "60/2 Nm", fibre: "silk", taken: "metric"},
	{text: "50s-2 spun silk", name: "50s-2 spun silk", count: "50s-2 spun silk", fibre: "spun silk", taken: "spun-silk"},
	{text: "8/2 lyocell #2F6F7E sea", name: "8/2 lyocell sea", count: "8/2 Ne", fibre: "lyocell", colour: "sea #2f6f7e", taken: "cotton"},
	{text: "cotton 60 %, linen 40% , 8/2 Ne", name: "cotton 60 %, linen 40%, 8/2 Ne", count: "8/2 Ne", fibre: "cotton 60 %, linen 40 %"},
	{text: "60 % wool 40 % silk; 2400 m/kg", name: "60 % wool 40 % silk, 2400 m/kg", count: "2400 m/kg", fibre: "wool 60 %, silk 40 %"},
	{text: "120 m / 50 g wool", name: "120 m / 50 g wool", count: "2400 m/kg", fibre: "wool"},
	{text: "60 Ne + 40 Ne cotton", name: "60 Ne + 40 Ne cotton", count: "60 Ne + 40 Ne", fibre: "cotton"},
	{text: "R 60 tex / 2 cotton", name: "R 60 tex / 2 cotton", count: "R 60 tex / 2", fibre: "cotton"},
	{text: "5,5 run woollen", name: "5,5 run woollen", count: "5.5 run", fibre: "woollen wool"},
	{text: "handspun wool, ewe grey, 24 wpi touching", name: "handspun wool, ewe grey", fibre: "wool", colour: "ewe grey", wraps: "24 wpi touching", handspun: true},
	{text: "10/2 mercerised cotton, red, 4 oz cone", name: "10/2 mercerised cotton, red", count: "10/2 Ne", fibre: "mercerised cotton", colour: "red", taken: "cotton", putUp: "4 oz cone"},
	{text: "2 ply 8/2 cotton yarn", name: "2 ply 8/2 cotton yarn", count: "8/2 Ne", fibre: "cotton", taken: "cotton"},
	{text: "French blue 8/2 Ne", name: "French blue 8/2 Ne", count: "8/2 Ne", colour: "French blue"},
	{text: "wool", name: "wool", fibre: "wool"},

	{text: "8/2", name: "8/2", codes: []string{"count count.no-system"}},
	{text: "8/2 Nee", name: "8/2 Nee", colour: "Nee", codes: []string{"count count.system"}},
	{text: "8/2 jute", name: "8/2 jute", fibre: "jute", codes: []string{"count count.no-system"}},
	{text: "2/8 cotton", name: "2/8 cotton", fibre: "cotton", codes: []string{"count count.ambiguous"}},
	{text: "8/2 Ne cottn", name: "8/2 Ne cottn", count: "8/2 Ne", colour: "cottn", codes: []string{"fibre fibre.unknown"}},
	{text: "8/2 Ne wool silk", name: "8/2 Ne wool silk", count: "8/2 Ne", codes: []string{"fibre fibre.share"}},
	{text: "8/2 cotton #12", name: "8/2 cotton", count: "8/2 Ne", fibre: "cotton", taken: "cotton", codes: []string{"colour colour.hex"}},
	{text: "grey ewe", name: "grey ewe", codes: []string{" label.unread"}},
	{text: "", codes: []string{" label.unread"}},
	{text: strings.Repeat("wool ", 50), codes: []string{" label.long"}},
}

func TestReadLabel(t *testing.T) {
	for _, c := range labelTests {
		list := &problem.List{}
		got := ReadLabel(c.text, list)
		var codes []string
		for _, p := range list.All() {
			codes = append(codes, p.Path+" "+p.Code)
		}
		if !slices.Equal(codes, c.codes) {
			t.Errorf("%q: problems %q, want %q", c.text, codes, c.codes)
		}
		for _, f := range []struct{ what, got, want string }{
			{"name", got.Name, c.name},
			{"count", got.Count.Is.String(), c.count},
			{"fibre", got.Composition.Is.String(), c.fibre},
			{"colour", got.Colour.String(), c.colour},
			{"system", string(got.Taken), string(c.taken)},
			{"put-up", got.PutUp.Typed, c.putUp},
			{"wraps", got.Wraps.Typed, c.wraps},
		} {
			if f.got != f.want {
				t.Errorf("%q: %s %q, want %q", c.text, f.what, f.got, f.want)
			}
		}
		if !slices.Equal(got.Others, c.others) || got.Handspun != c.handspun {
			t.Errorf("%q: others %q, handspun %v", c.text, got.Others, got.Handspun)
		}
	}
}

// Whatever is written, what was read of it is read back as the same.
func FuzzReadLabel(f *testing.F) {
	for _, c := range labelTests {
		f.Add(c.text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		got := ReadLabel(text, &problem.List{})
		if typed := got.Count.Typed; typed != "" {
			if c, err := ParseCount(typed); err != nil || !c.Equal(got.Count.Is) {
				t.Errorf("%q: count %q reads back as %v, %v", text, typed, c, err)
			}
		}
		if typed := got.Composition.Typed; typed != "" {
			if c, err := ParseComposition(typed); err != nil || !c.Equal(got.Composition.Is) {
				t.Errorf("%q: fibre %q reads back as %v, %v", text, typed, c, err)
			}
		}
		if said := got.Colour.String(); said != "" {
			if c, err := ParseColour(said); err != nil || c != got.Colour {
				t.Errorf("%q: colour %q reads back as %v, %v", text, said, c, err)
			}
		}
	})
}
