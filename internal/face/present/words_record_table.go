package present

import "sley/internal/trade/record"

// kindNames are the kinds of document: one, and several.
var kindNames = map[record.Kind][2]string{
	record.Warp:  {"warp", "warps"},
	record.Yarn:  {"yarn", "yarns"},
	record.Loom:  {"loom", "looms"},
	record.Draft: {"draft", "drafts"},
}

// stageNames are where the work of a warp stands.
var stageNames = map[string]string{
	record.Planned:  "planned",
	record.Begun:    "on the loom",
	record.OnTheWay: "being woven",
	record.Done:     "finished",
}

// actNames are what made a version.
var actNames = map[record.Act]string{
	record.Add:       "added",
	record.Edit:      "changed",
	record.Undo:      "undone",
	record.Redo:      "done again",
	record.Return:    "made again what it was",
	record.Remove:    "removed",
	record.BringBack: "brought back",
	record.Take:      "brought in line with the shelf",
	record.Amend:     "amended, as it stands on the loom",
}

// topicNames are what entries are about.
var topicNames = map[record.Topic]string{
	record.Stock:       "stock",
	record.Log:         "log",
	record.Progress:    "how far the work is",
	record.Measurement: "sizes measured",
}

// whatNames are what happened.
var whatNames = map[string]string{
	record.Bought:   "bought",
	record.Used:     "used",
	record.Measured: "measured: so much is there",
	record.Lost:     "lost",
	record.Started:  "work began",
	record.Noted:    "note",
	record.Sat:      "sitting",
	record.Broken:   "an end broke",
	record.Finished: "off the loom and done",
	record.SatDown:  "sat down at the loom",
	record.Pictured: "photograph",
	record.Advanced: "warp wound on",
	record.Woven:    "woven",
	record.Dressed:  "done",
	record.Chosen:   "chosen",
	record.Taped:    "the tape reads",
	record.Weighed:  "weighed",
	record.Size:     "measured",
}

// weaveNames are the weaves that drafts are found by.
var weaveNames = map[string]string{
	"plain": "plain weave", "warp-rib": "warp rib", "weft-rib": "weft rib", "basket": "basket weave",
	"twill": "twill", "broken-twill": "broken twill", "point-twill": "point twill",
	"herringbone": "herringbone", "diamond": "diamond twill", "satin": "satin",
	"irregular-satin": "irregular satin", "double-cloth": "double cloth",
}
