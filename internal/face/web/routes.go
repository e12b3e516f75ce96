package web

import (
	"net/http"
	"slices"
	"strings"

	"sley/internal/trade/record"
)

// route is one thing that the page can ask for.
type route struct {
	pattern string
	says    string
	do      func(*Server, http.ResponseWriter, *http.Request)
}

func (r route) handler(s *Server) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, req *http.Request) { r.do(s, w, req) })
}

// routes are all there are; docs/api.md describes each.
var routes = []route{
	{"GET /{$}", "the page", (*Server).page},
	{"GET /new", "the page, where a warp is begun", (*Server).page},
	{"GET /warps/{id}/{stage}", "the page, at a stage of a warp", (*Server).page},
	{"GET /loomside/{id}", "the page, beside the loom", (*Server).page},
	{"GET /yarns", "the page, at the yarns", (*Server).page},
	{"GET /yarns/{id}", "the page, at a yarn", (*Server).page},
	{"GET /looms", "the page, at the looms", (*Server).page},
	{"GET /looms/{id}", "the page, at a loom", (*Server).page},
	{"GET /drafts", "the page, at the drafts", (*Server).page},
	{"GET /drafts/{id}", "the page, at a draft, or the catalogue", (*Server).page},
	{"GET /drafts/{id}/table", "the page, drawing on a draft", (*Server).page},
	{"GET /records", "the page, at the records", (*Server).page},
	{"GET /units", "the page, at the units", (*Server).page},
	{"GET /beside", "the page, at the devices beside the loom", (*Server).page},
	{"GET /guide", "the page, at the guide", (*Server).page},
	{"GET /guide/{part}", "the page, at a part of the guide", (*Server).page},
	{"GET /glossary", "the page, at the words of the trade", (*Server).page},
	{"GET /open/{token}", "puts the token into a cookie and goes on to the page", (*Server).opened},
	{"GET /static/", "what the page is drawn with", (*Server).static},
	{"/", "anything else is not there", (*Server).nothing},

	{"GET /api/book", "the book's place and how much it holds", (*Server).bookIs},
	{"POST /api/book/check", "reads all of the book and says what is wrong with it", (*Server).checked},
	{"POST /api/book/copies", "makes the copy of the day", (*Server).copied},
	{"POST /api/demo/clear", "removes what came with the demo", (*Server).demoCleared},
	{"GET /api/settings/{name}", "a setting", (*Server).setting},
	{"POST /api/settings/{name}", "sets it", (*Server).set},
	{"GET /api/events", "what changes, as it changes", (*Server).stream},

	{"GET /api/warps", "warps by name", listing(record.Warp)},
	{"GET /api/yarns", "yarns by name", listing(record.Yarn)},
	{"GET /api/looms", "looms by name", listing(record.Loom)},
	{"GET /api/drafts", "drafts by name, shafts, treadles, floats, weave", listing(record.Draft)},
	{"POST /api/warps", "adds a warp: a plan file", (*Server).warpAdded},
	{"POST /api/drafts", "adds a draft: an interchange text, or a plan file", (*Server).draftAdded},
	{"POST /api/yarns", "adds a yarn", (*Server).yarnAdded},
	{"POST /api/looms", "adds a loom", (*Server).loomAdded},

	{"GET /api/documents/{id}", "a document as it stands", (*Server).shown},
	{"POST /api/documents/{id}/changes", "saves an edit", (*Server).changed},
	{"POST /api/documents/{id}/undo", "takes back what this window did last", (*Server).undone},
	{"POST /api/documents/{id}/redo", "brings that back", (*Server).redone},
	{"POST /api/documents/{id}/return", "makes it what it was in an earlier version", (*Server).returned},
	{"POST /api/documents/{id}/remove", "removes it", (*Server).removed},
	{"POST /api/documents/{id}/bring-back", "brings it back", (*Server).broughtBack},
	{"GET /api/documents/{id}/versions", "its versions, the newest first", (*Server).versions},
	{"GET /api/documents/{id}/versions/{number}", "what it was in one of them", (*Server).version},
	{"GET /api/documents/{id}/events", "what happened to it", (*Server).happenings},
	{"POST /api/documents/{id}/stock", "what happened to a yarn's stock", (*Server).stocked},
	{"POST /api/events/{event}/cancel", "takes an event back", (*Server).cancelled},

	{"GET /api/documents/{id}/origins", "where the parts of a warp came from", (*Server).origins},
	{"POST /api/documents/{id}/use", "copies something from a shelf into a warp", (*Server).used},
	{"POST /api/documents/{id}/take-newer", "copies the newer version of it", (*Server).newerTaken},
	{"POST /api/documents/{id}/put-on-shelf", "puts a part of a warp on a shelf", (*Server).shelved},
	{"GET /api/documents/{id}/reckoning", "every number of a warp", (*Server).reckoned},
	{"GET /api/documents/{id}/frozen", "the plan as it was when work began", (*Server).frozen},
	{"POST /api/documents/{id}/start", "freezes the plan: work begins", (*Server).begun},
	{"POST /api/documents/{id}/amend", "says what stands on the loom", (*Server).amended},
	{"POST /api/documents/{id}/log", "writes into the log of a warp", (*Server).logged},
	{"POST /api/documents/{id}/sit-down", "begins a sitting at the loom", (*Server).satDown},
	{"POST /api/documents/{id}/stand-up", "ends it", (*Server).stoodUp},
	{"POST /api/documents/{id}/photographs", "takes a photograph into its log", (*Server).photographed},
	{"GET /api/photographs/{event}", "a photograph of a log", (*Server).photograph},
	{"GET /api/documents/{id}/hours", "the hours at the loom so far and to go", (*Server).hours},
	{"POST /api/documents/{id}/woven", "says how many picks are woven", (*Server).wove},
	{"GET /api/documents/{id}/loomside", "what is to be done at the loom, and how far it is", (*Server).loomside},
	{"POST /api/documents/{id}/reached", "says how far a step at the loom is", (*Server).reached},
	{"POST /api/documents/{id}/chosen", "says how something is done at the loom", (*Server).chosen},
	{"POST /api/documents/{id}/tape", "says what the tape reads", (*Server).taped},
	{"POST /api/documents/{id}/weighed", "says what is left of a weft yarn", (*Server).weighed},
	{"POST /api/documents/{id}/measurements", "a size that was measured", (*Server).measured},

	{"POST /api/documents/{id}/reckoning", "a warp as it would be, with nothing kept", (*Server).previewed},
	{"GET /api/kinds", "kinds of pieces, with their usual sizes", (*Server).kinds},
	{"POST /api/warps/new", "begins a warp of a kind of piece", (*Server).warpBegun},
	{"POST /api/documents/{id}/copy", "adds a copy of it", (*Server).copyMade},
	{"GET /api/shelf", "yarns with what of them is promised", (*Server).shelf},
	{"GET /api/documents/{id}/promised", "a yarn with what of it is promised", (*Server).promised},
	{"POST /api/yarns/read", "reads a yarn from its label", (*Server).yarnRead},
	{"GET /api/documents/{id}/record", "what came of a warp, and what it teaches", (*Server).recorded},
	{"GET /api/documents/{id}/finishing", "what is done with its cloth after the last pick", (*Server).finishing},
	{"GET /api/documents/{id}/label", "what the label of its cloth says", (*Server).labelled},
	{"GET /api/records", "the warps that are finished, with what they teach", (*Server).records},
	{"GET /api/documents/{id}/samples", "the samples of a yarn, or what they and records say of a warp", (*Server).samples},
	{"GET /api/weaves", "the catalogue of weaves", (*Server).weaves},
	{"GET /api/weaves/{weave}", "what a weave is with the values asked for", (*Server).weave},
	{"GET /api/weaves/{weave}/picture", "it drawn as handbooks print it", (*Server).weavePicture},
	{"GET /api/weaves/{weave}/cloth", "the cloth that it makes", (*Server).weaveCloth},
	{"POST /api/drafts/made", "puts a weave of the catalogue on the shelf", (*Server).weaveAdded},
	{"GET /api/blocks", "the ways to weave blocks", (*Server).blockSystems},
	{"GET /api/changes", "what can be made of a draft", (*Server).draftChanges},
	{"POST /api/documents/{id}/change", "makes that of a draft of the shelf", (*Server).reworked},
	{"GET /api/documents/{id}/table", "a draft, or a warp's, to be drawn on", (*Server).tableShown},
	{"POST /api/documents/{id}/table", "makes a gesture on it", (*Server).tableDrawn},
	{"GET /api/documents/{id}/table/findings", "what there is to tell of it before it is woven", (*Server).tableLookedOver},
	{"GET /api/documents/{id}/draft", "what is known of a draft, or of a warp's", (*Server).judged},
	{"GET /api/documents/{id}/draft.wif", "it as an interchange text", draftFile("wif")},
	{"GET /api/documents/{id}/draft.svg", "it drawn", draftFile("svg")},
	{"GET /api/documents/{id}/draft.png", "it drawn, as dots", draftFile("png")},
	{"GET /api/documents/{id}/draft.pdf", "it drawn on paper", draftFile("pdf")},
	{"GET /api/units", "what figures are shown in", (*Server).unitsAre},
	{"POST /api/units", "says it", (*Server).unitsSet},
	{"GET /api/beside", "how it stands with devices beside the loom", (*Server).besideIs},
	{"POST /api/beside", "listens for them, or no more", (*Server).besideSet},
	{"POST /api/beside/code", "makes a code by which one is paired", (*Server).codeOffered},
	{"GET /api/beside/code.svg", "it drawn, to be read by a phone", (*Server).codeDrawn},
	{"POST /api/devices/{device}", "calls a device otherwise", (*Server).deviceNamed},
	{"POST /api/devices/{device}/revoke", "lets it in no more", (*Server).deviceRevoked},
	{"GET /api/documents/{id}/sheets", "the sheets that a warp has", (*Server).sheetsListed},
	{"GET /api/documents/{id}/sheets.pdf", "sheets on paper", (*Server).sheetsPrinted},
	{"GET /api/documents/{id}/sheets.png", "a page of them, to look at", (*Server).sheetShown},
	{"GET /api/documents/{id}/picture", "a picture of its cloth, draft, board, stripes or tape", (*Server).pictured},
}

// Routes lists the routes as METHOD PATH.
func Routes() []string {
	var out []string
	for _, r := range routes {
		if strings.Contains(r.pattern, " ") {
			out = append(out, strings.TrimSuffix(r.pattern, "{$}"))
		}
	}
	slices.Sort(out)
	return out
}

func (s *Server) page(w http.ResponseWriter, _ *http.Request) {
	w.Header().Set("Content-Type", "text/html; charset=utf-8")
	_, _ = w.Write(IndexPage()) // who asked may have gone
}

func (s *Server) static(w http.ResponseWriter, r *http.Request) { Assets().ServeHTTP(w, r) }

func (s *Server) nothing(w http.ResponseWriter, _ *http.Request) {
	refuse(w, http.StatusNotFound, "request.route")
}
