package web_test

import (
	"encoding/json"
	"fmt"
	"net/http"
	"slices"
	"strconv"
)

// asked is the body of a change.
type asked struct {
	Base   int
	Window string
	Set    []struct{ Path, Value string }
}

func (f *fake) change(w http.ResponseWriter, r *http.Request) {
	f.mu.Lock()
	defer f.mu.Unlock()
	f.posts++
	id, _ := strconv.Atoi(r.PathValue("id"))
	var body asked
	if err := json.NewDecoder(r.Body).Decode(&body); err != nil || body.Window == "" {
		answer(w, 400, trouble("request.bad", "the request cannot be read", "this is the page's fault"))
		return
	}
	if id < 1 || id > len(f.docs) || body.Base < 1 {
		answer(w, 404, trouble("document.gone", "there is no such warp", "it was taken out elsewhere"))
		return
	}
	d := f.docs[id-1]
	switch r.PathValue("act") {
	case "changes":
		f.set(w, d, body)
	case "undo":
		f.step(w, d, body, d.steps, d.redos)
	case "redo":
		f.step(w, d, body, d.redos, d.steps)
	}
}

func trouble(code, says, fix string) object {
	return object{"error": object{"code": code, "says": says, "fix": fix}}
}

// set changes the name, when nobody else did since base.
func (f *fake) set(w http.ResponseWriter, d *document, body asked) {
	name := body.Set[0].Value
	switch {
	case name == "":
		answer(w, 422, object{"problems": []object{{
			"code": "name.missing", "severity": "error", "path": "name", "read": "", "says": "a warp needs a name", "fix": "give it one",
		}}})
	case d.names[body.Base-1] != d.name():
		clash(w, d, body.Base, name)
	default:
		d.steps[body.Window] = append(d.steps[body.Window], len(d.names))
		d.redos[body.Window] = nil
		f.write(w, d, name, body.Window)
	}
}

func clash(w http.ResponseWriter, d *document, base int, yours string) {
	answer(w, 409, object{"conflict": object{
		"id": d.id, "base": base, "head": len(d.names),
		"differences": []object{{"path": "name", "base": d.names[base-1], "theirs": d.name(), "yours": yours}},
	}})
}

// step goes to what stood before the window's last step, and notes how to come back.
func (f *fake) step(w http.ResponseWriter, d *document, body asked, from, to map[string][]int) {
	steps := from[body.Window]
	if len(steps) == 0 {
		answer(w, 409, trouble("undo.nothing", "this window has nothing to step back to", "go on"))
		return
	}
	before := steps[len(steps)-1]
	if d.names[body.Base-1] != d.name() {
		clash(w, d, body.Base, d.names[before-1])
		return
	}
	from[body.Window] = steps[:len(steps)-1]
	to[body.Window] = append(to[body.Window], len(d.names))
	f.write(w, d, d.names[before-1], body.Window)
}

// write is the one place where a book changes, and tells every stream.
func (f *fake) write(w http.ResponseWriter, d *document, name, window string) {
	d.names = append(d.names, name)
	answer(w, 200, object{"id": d.id, "version": len(d.names), "problems": []object{}})
	f.tell(fmt.Sprintf(`{"kind":"warp","id":%d,"version":%d,"act":"edit","window":%q}`, d.id, len(d.names), window))
}

func (f *fake) tell(news string) {
	for stream := range f.streams {
		stream <- news
	}
}

// elsewhere changes a name as another program would.
func (f *fake) elsewhere(id int, name string) {
	f.mu.Lock()
	defer f.mu.Unlock()
	d := f.docs[id-1]
	d.names = append(d.names, name)
	f.tell(`{"kind":"warp","act":"edit","window":"elsewhere"}`)
}

func (f *fake) clear(w http.ResponseWriter, _ *http.Request) {
	f.mu.Lock()
	defer f.mu.Unlock()
	all := len(f.docs)
	f.docs = slices.DeleteFunc(f.docs, func(d *document) bool { return d.demo })
	f.demo = false
	answer(w, 200, object{"removed": all - len(f.docs)})
	f.tell(`{"kind":"book","act":"clear"}`)
}
