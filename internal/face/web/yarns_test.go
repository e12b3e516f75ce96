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
