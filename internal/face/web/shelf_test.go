package web_test

import "testing"

type shelfItem struct {
	ID                  int
	Name, Colour, Grist string
	Figures             []figureRead
	Stock               *struct{ Length, Weight, Says string }
	Promised            []struct {
		ID         int
		Name, Says string
	}
	Left *struct {
		Says  string
		Short bool
	}
}

// The shelf says of each yarn what warps in hand take of it. The demo's berth blanket
// takes nearly all of the handspun: 1,450 m were there.
func TestShelf(t *testing.T) {
	r := newReal(t)
	var l struct {
		Items []shelfItem
		Total int
		Next  string
	}
	if status := r.ask("GET", "/api/shelf?words=handspun", nil, &l); status != 200 || l.Total != 1 || len(l.Items) != 1 {
		t.Fatalf("%d %+v", status, l)
	}
	y := l.Items[0]
	if y.Colour == "" || y.Grist == "" || y.Stock == nil || y.Stock.Says == "" || len(y.Promised) != 1 || y.Promised[0].Name != "Berth blanket" || y.Left == nil || y.Left.Short {
		t.Errorf("%+v", y)
	}
	var one shelfItem
	if status := r.ask("GET", "/api/documents/"+itoa(y.ID)+"/promised", nil, &one); status != 200 || one.Name != y.Name || len(one.Promised) != 1 {
		t.Errorf("%d %+v", status, one)
	}
	lost := map[string]any{"id": "entry-of-the-test", "window": "w", "what": "lost", "typed": "100 m"}
	if status := r.ask("POST", "/api/documents/"+itoa(y.ID)+"/stock", lost, nil); status != 200 {
		t.Fatal(status)
	}
	if r.ask("GET", "/api/documents/"+itoa(y.ID)+"/promised", nil, &one); !one.Left.Short {
		t.Errorf("with 100 m lost there is still enough: %+v", one.Left)
	}
	l.Items = nil
	if r.ask("GET", "/api/shelf?most=4", nil, &l); len(l.Items) != 4 || l.Next == "" || l.Total != 9 {
		t.Errorf("%d of %d, next %q", len(l.Items), l.Total, l.Next)
	}
	last := l.Items[3].ID
	if r.ask("GET", "/api/shelf?most=4&after="+l.Next, nil, &l); len(l.Items) != 4 || l.Items[0].ID == last {
		t.Errorf("the next lot: %+v", l.Items)
	}
	for path, want := range map[string]int{"/api/shelf?most=x": 400, "/api/documents/99999/promised": 404} {
		if status := r.ask("GET", path, nil, nil); status != want {
			t.Errorf("%s: %d", path, status)
		}
	}
	id, _, _ := r.firstWarp()
	if status := r.ask("GET", "/api/documents/"+itoa(id)+"/promised", nil, nil); status != 404 {
		t.Errorf("of a warp: %d", status)
	}
}

// A yarn of which nothing was entered has an unknown stock, and not none.
func TestShelfOfAYarnThatIsNew(t *testing.T) {
	r := newReal(t)
	var added answered
	r.ask("POST", "/api/yarns", map[string]any{"window": "w", "name": "new wool"}, &added)
	var one shelfItem
	if status := r.ask("GET", "/api/documents/"+itoa(added.ID)+"/promised", nil, &one); status != 200 || one.Stock != nil || one.Left != nil || one.Promised == nil {
		t.Errorf("%d %+v", status, one)
	}
}
