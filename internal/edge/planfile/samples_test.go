package planfile

import "testing"

const sampled = `[yarns.grey]
count = "2/8 Nm"

[yarns.grey.samples."2/2 twill, fulled"]
weave = "2/2 twill"
wash = "fulled"
sett = "20 epi"
on-loom = "10 in"
washed = "8 1/2 in"

[yarns.grey.samples.plain]
reed = "35 cm"
width-washed = "30 cm"
`

func TestSamples(t *testing.T) {
	plan, _, list := Decode("plan.toml", []byte(towel+sampled))
	if list.Failed() {
		t.Fatal(list.All())
	}
	got := plan.Yarns[len(plan.Yarns)-1].Samples
	if len(got) != 2 || got[0].Name != "2/2 twill, fulled" || got[0].Weave != "2/2 twill" || got[0].Washed.Typed != "8 1/2 in" ||
		got[1].Reed.Typed != "35 cm" || got[1].OnLoom.Given() {
		t.Errorf("%+v", got)
	}
}

// Samples are written under headings of their own, as they are read.
func TestSamplesAreLaidOut(t *testing.T) {
	doc, list := ReadText("plan.toml", []byte("sley = 1\n\n"+sampled))
	if doc == nil || list.Failed() {
		t.Fatal(list.All())
	}
	if got := string(doc.Text()); got != "sley = 1\n\n"+sampled {
		t.Errorf("laid out as\n%s", got)
	}
}

// Everything wrong with a sample is said at once.
func TestSamplesThatAreWrong(t *testing.T) {
	_, _, list := Decode("plan.toml", []byte(towel+`[yarns.grey.samples.first]
weave = "velvet"
sett = "20"
on-loom = "0 in"
washed = "8 1/2"
length = "10 in"
`))
	got := map[string]string{}
	for _, p := range list.All() {
		got[p.Path] = p.Code
	}
	for key, want := range map[string]string{
		"weave": "choice.unknown", "sett": "density.no-unit", "on-loom": "length.zero", "washed": "length.no-unit", "length": "key.unknown",
	} {
		if code := got["yarns.grey.samples.first."+key]; code != want {
			t.Errorf("%s: %q, want %s", key, code, want)
		}
	}
	_, _, list = Decode("plan.toml", []byte(towel+"[yarns.grey]\nsamples = 3\n"))
	if all := list.All(); len(all) != 1 || all[0].Code != "value.kind" {
		t.Errorf("no table: %+v", all)
	}
}

func TestManySamples(t *testing.T) {
	text := towel + numbered("[yarns.grey.samples.s%d]\n", mostSamples+1)
	_, _, list := Decode("plan.toml", []byte(text))
	if all := list.All(); len(all) != 1 || all[0].Code != "samples.many" || all[0].Path != "yarns.grey.samples" {
		t.Errorf("%+v", all)
	}
}
