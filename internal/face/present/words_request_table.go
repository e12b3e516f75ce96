package present

// requestWords says why a request was not let through, and what to do.
var requestWords = map[string][2]string{
	"request.host":          {"this server answers to the names of this machine only", "open the address that sley printed"},
	"request.cross-origin":  {"another page asked to change the book, and may not", "open the address that sley printed, and change it there"},
	"request.token":         {"this window does not belong to the sley that runs now", "start sley again, or open the address that it printed"},
	"request.device":        {"this device is not let in, or no more", "pair it: at the computer open \"By the loom\" and ask for a code"},
	"request.often":         {"too many codes were tried from here", "wait five minutes, then ask for a new code at the computer"},
	"beside.network":        {"this computer is in no network that a phone could reach it in", "join it to the same network as the phone, then turn this on"},
	"beside.off":            {"sley does not listen for phones and tablets now", "turn it on first"},
	"request.type":          {"the request is not plain JSON", "send it as application/json, not compressed"},
	"request.large":         {"the request is larger than anything the book holds", "send less at once: files may have 8 MB"},
	"request.picture-type":  {"the body of the request is no picture", "send the picture itself, as image/jpeg or of whichever type it is, not compressed"},
	"request.picture-large": {"the photograph has more than 25 MB", "set the camera to smaller pictures, or save a smaller copy and send that"},
	"request.slow":          {"the photograph did not arrive in time", "come nearer to the network, and send it again"},
	"request.json":          {"the request is not the JSON that is expected here", "see docs/api.md"},
	"request.query":         {"a value behind the question mark cannot be read", "see docs/api.md"},
	"request.document":      {"there is no such document", "look for it in its list"},
	"request.weave":         {"the catalogue has no such weave", "look for it in the list of weaves"},
	"request.picture":       {"there is nothing of it to draw", "see what the document says of it: a draft for its drawing, yarns and a draft for its cloth, pegs for its board"},
	"request.change":        {"the draft cannot be changed so", "see docs/drafts.md for the changes that there are"},
	"request.sheet":         {"there is no such page of its sheets", "ask for sheets that the plan has, and a page that they have"},
	"request.route":         {"there is nothing at this address", "go back to the first page"},
}
