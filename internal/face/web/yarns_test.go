package web_test

import "testing"

type yarnRead struct {
	Name string
	Set  []struct {
		Path  string
		Value any
	}
	Figures  []struct{ ID, Says, Value, Note string }
	Problems []struct{ Code, Path, Says string }
}

func (y yarnRead) figure(id string) string {
	for _, f := range y.Figures {
		if f.ID == id {
			return f.Value
		}
	}
	return ""
}

// A label is read into the values that put the yarn on the shelf, and the yarn that they
// make is that of the label. 8/2 Ne is 3,360 yd/lb (4 hanks of 840 yd).
func TestYarnIsReadAndAdded(t *testing.T) {
	r := newReal(t)
	var read yarnRead
	if status := r.ask("POST", "/api/yarns/read", map[string]any{"text": "8/2 cotton, harbour blue #25407c"}, &read); status != 200 {
		t.Fatal(status)
	}
	if read.Name != "8/2 cotton, harbour blue" || len(read.Set) != 3 || len(read.Problems) != 0 {
		t.Errorf("read %+v", read)
	}
	if got := read.figure("grist"); got != "3360 yd/lb" {
		t.Errorf("grist %q", got)
	}
	if got := read.figure("systems[metric]"); got != "6.773 Nm" {
		t.Errorf("metric count %q", got)
	}
	if read.Figures[0].ID != "count" || read.Figures[0].Note == "" {
		t.Errorf("the system that was taken is not told: %+v", read.Figures[0])
	}
	var added answered
	body := map[string]any{"window": "w", "name": read.Name, "set": read.Set}
	if status := r.ask("POST", "/api/yarns", body, &added); status != 200 || len(added.Problems) != 0 {
		t.Fatalf("%d %+v", status, added)
	}
	var shown struct{ Text string }
	r.ask("GET", "/api/documents/"+itoa(added.ID), nil, &shown)
	if want := "count = \"8/2 Ne\"\nfibre = \"cotton\"\ncolour = \"harbour blue #25407c\"\n"; shown.Text != want {
		t.Errorf("on the shelf is %q, want %q", shown.Text, want)
	}
}

// What cannot be read is told beside what could, and nothing is refused.
func TestYarnThatIsHalfRead(t *testing.T) {
	r := newReal(t)
	var read yarnRead
	if status := r.ask("POST", "/api/yarns/read", map[string]any{"text": "8/2, grey"}, &read); status != 200 {
		t.Fatal(status)
	}
	if len(read.Problems) != 1 || read.Problems[0].Path != "count" || read.Problems[0].Says == "" || read.figure("colour") != "grey" {
		t.Errorf("%+v", read)
	}
	if status := r.ask("POST", "/api/yarns/read", map[string]any{"texts": "x"}, nil); status != 400 {
		t.Errorf("an unknown key: %d", status)
	}
}

// What was measured is laid over the label, or stands alone. 10 yd of 5 g are
// 10 × 453.59237 ÷ 5 = 907 yd/lb.
func TestYarnIsReadAsMeasured(t *testing.T) {
	r := newReal(t)
	skein := []map[string]any{{"path": "skein.length", "value": "10 yd"}, {"path": "skein.weight", "value": "5 g"}}
	for _, text := range []string{"", "8/2 cotton"} {
		var read yarnRead
		if status := r.ask("POST", "/api/yarns/read", map[string]any{"text": text, "set": skein}, &read); status != 200 {
			t.Fatal(status)
		}
		if got := read.figure("grist"); got != "907 yd/lb" {
			t.Errorf("%q: grist %q", text, got)
		}
	}
	var read yarnRead
	r.ask("POST", "/api/yarns/read", map[string]any{"set": skein[:1]}, &read)
	if len(read.Problems) != 1 || read.Problems[0].Path != "skein.weight" {
		t.Errorf("half a skein: %+v", read.Problems)
	}
}

// What is known of a yarn of the shelf, and where a file that was sent is wrong.
func TestKnownAndPlaced(t *testing.T) {
	r := newReal(t)
	id, _ := r.named("yarns", "linen 8/1, flax")
	var one struct{ Known []figureRead }
	r.ask("GET", "/api/documents/"+itoa(id)+"/promised", nil, &one)
	if len(one.Known) < 20 || one.Known[0].ID != "grist" {
		t.Errorf("known: %+v", one.Known)
	}
	var bad struct {
		Problems []struct {
			Line          int
			Excerpt, Says string
		}
	}
	r.ask("POST", "/api/warps", map[string]any{"window": "w", "name": "bad.toml", "text": "sley = 1\n\n[[pieces]]\nlength = \"30\"\n"}, &bad)
	if len(bad.Problems) == 0 || bad.Problems[len(bad.Problems)-1].Line != 4 || bad.Problems[len(bad.Problems)-1].Excerpt != `length = "30"` {
		t.Errorf("%+v", bad)
	}
}
