package sley_test

// actions is everything that a person can do: each exported function and method of
// internal/app, with the command, the route and the sheet through which it is done, and
// where the manual tells of it. What has none of them says why.
var actions = []action{
	// Plans and drafts, with or without a book.
	{does: "ReckonPlan", command: "reckon", route: "GET /api/documents/{id}/reckoning", sheet: "glance", manual: "README.md#ten-lines"},
	{does: "FindPaths", because: completes},
	{does: "Mark", because: "a figure of reckon, and the foot of every sheet"},
	{does: "Sett", command: "sett", manual: "README.md#ten-lines"},
	{does: "Reeds", command: "reed", manual: "README.md#ten-lines"},
	{does: "Yarn", command: "yarn", manual: "README.md#ten-lines"},
	{does: "WeaveNames", because: completes},
	{does: "FibreNames", because: completes},
	{does: "Sheets", because: "what SheetFiles makes of a PDF"},
	{does: "SheetFiles", command: "sheet", manual: "docs/sheets.md"},
	{does: "ReadDraft", command: "draft show", manual: "docs/drafts.md"},
	{does: "Drafted.Repeat", because: "frames the repeat when a draft is drawn"},
	{does: "JudgeDraft", because: "JudgeWoven with one shuttle from the left"},
	{does: "JudgeWoven", command: "draft check", manual: "docs/drafts.md"},
	{does: "LongFloats", command: "draft draw", manual: "docs/drafts.md"},
	{does: "ChangeDraft", command: "draft convert", manual: "docs/drafts.md"},
	{does: "Changes", because: completes},
	{does: "WriteDraft", command: "draft turn", manual: "docs/drafts.md"},
	{does: "MakeWeave", command: "draft make", manual: "docs/catalogue.md"},
	{does: "Weaves", command: "draft make", manual: "docs/catalogue.md"},
	{does: "WriteBlocks", command: "draft blocks", manual: "docs/catalogue.md"},
	{does: "SystemNames", command: "draft blocks", manual: "docs/catalogue.md"},
	{does: "FeetNames", because: completes},

	// The book as a whole.
	{does: "Open", command: "book new", route: "GET /api/book", manual: "docs/book.md#where-the-book-is"},
	{does: "Peek", because: "how commands read a book that another sley has"},
	{does: "UsualPlace", command: "book where", route: "GET /api/book", manual: "docs/book.md#where-the-book-is"},
	{does: "HolderOf", command: "book where", manual: "docs/book.md#where-the-book-is"},
	{does: "InUse", because: "says who holds a book that could not be opened"},
	{does: "Copies", command: "book where", manual: "docs/book.md#where-the-book-is"},
	{does: "CheckFile", command: "book check", manual: "docs/book.md#copies-folders-other-machines"},
	{does: "Restore", command: "book restore", manual: "docs/book.md#when-something-is-wrong"},
	{does: "OpenBook.Path", because: "a figure of where"},
	{does: "OpenBook.Fresh", because: "says that the book was made just now"},
	{does: "OpenBook.Copy", command: "book copy", manual: "docs/book.md#copies-folders-other-machines"},
	{does: "OpenBook.Check", command: "book check", route: "POST /api/book/check", manual: "docs/book.md#copies-folders-other-machines"},
	{does: "OpenBook.KeepToday", route: "POST /api/book/copies", manual: "docs/book.md#copies-folders-other-machines"},
	{does: "OpenBook.Serving", because: "what a running page writes for a second sley"},
	{does: "OpenBook.LeftToken", because: "what a running page takes over"},
	{does: "OpenBook.Tend", because: "what a running page does in the background"},
	{does: "OpenBook.Close", because: "the end of every command"},
	{does: "NewStudio", because: "how a book is opened, and tests"},
	{does: "Studio.Program", because: "a figure of the page"},
	{does: "Studio.FillDemo", command: "book new", manual: "docs/book.md#where-the-book-is"},
	{does: "Studio.ClearDemo", command: "book clear-demo", route: "POST /api/demo/clear", manual: "docs/book.md#where-the-book-is"},
	{does: "Studio.Export", command: "book export", manual: "docs/book.md#copies-folders-other-machines"},
	{does: "Studio.Import", command: "book import", manual: "docs/book.md#copies-folders-other-machines"},
	{does: "Studio.Watch", route: "GET /api/events", because: "a command ends before anything else could change"},
	{does: "Studio.Refresh", because: "what is done in the background, or at the end of a command"},
	{does: "Studio.Setting", route: "GET /api/settings/{name}", because: "settings are of the page"},
	{does: "Studio.Set", route: "POST /api/settings/{name}", because: "settings are of the page"},
	{does: "Studio.RememberPort", because: "what a running page does"},
	{does: "Studio.RememberedPort", because: "what a running page does"},

	// Finding and looking.
	{does: "Studio.List", command: "book list", route: "GET /api/warps", manual: "docs/book.md#looking"},
	{does: "Studio.Counts", route: "GET /api/book", because: "a list tells how many it has"},
	{does: "Studio.Named", command: "book show", manual: "docs/book.md#documents-and-their-names"},
	{does: "Studio.Show", command: "book show", route: "GET /api/documents/{id}", manual: "docs/book.md#looking"},
	{does: "DraftWeaves", because: completes},
	{does: "Studio.History", command: "book history", route: "GET /api/documents/{id}/versions", manual: "docs/book.md#looking"},
	{does: "Studio.VersionText", command: "book show", route: "GET /api/documents/{id}/versions/{number}", manual: "docs/book.md#looking"},

	// Adding, changing, undoing.
	{does: "Studio.AddWarp", command: "book add warp", route: "POST /api/warps", manual: "docs/book.md#adding-and-changing"},
	{does: "Studio.AddDraft", command: "book add draft", route: "POST /api/drafts", manual: "docs/book.md#adding-and-changing"},
	{does: "Studio.AddYarn", command: "book add yarn", route: "POST /api/yarns", manual: "docs/book.md#adding-and-changing"},
	{does: "Studio.AddLoom", command: "book add loom", route: "POST /api/looms", manual: "docs/book.md#adding-and-changing"},
	{does: "ReadSet", because: "how a command line says a value"},
	{does: "Studio.Save", command: "book set", route: "POST /api/documents/{id}/changes", manual: "docs/book.md#adding-and-changing"},
	{does: "Studio.Remove", command: "book remove", route: "POST /api/documents/{id}/remove", manual: "docs/book.md#adding-and-changing"},
	{does: "Studio.BringBack", command: "book bring-back", route: "POST /api/documents/{id}/bring-back", manual: "docs/book.md#adding-and-changing"},
	{does: "Studio.Undo", command: "book undo", route: "POST /api/documents/{id}/undo", manual: "docs/book.md#undoing"},
	{does: "Studio.Redo", command: "book redo", route: "POST /api/documents/{id}/redo", manual: "docs/book.md#undoing"},
	{does: "Studio.Return", command: "book return", route: "POST /api/documents/{id}/return", manual: "docs/book.md#undoing"},

	// Stock and entries.
	{does: "Studio.Stock", command: "book stock", route: "GET /api/documents/{id}", manual: "docs/book.md#stock"},
	{does: "Studio.Stocked", command: "book stock", route: "POST /api/documents/{id}/stock", manual: "docs/book.md#stock"},
	{does: "Studio.Cancel", command: "book cancel", route: "POST /api/events/{event}/cancel", manual: "docs/book.md#stock"},
	{does: "Studio.Events", command: "book log", route: "GET /api/documents/{id}/events", manual: "docs/book.md#work-on-a-warp"},

	// Shelf and warps.
	{does: "Studio.Use", command: "book use", route: "POST /api/documents/{id}/use", manual: "docs/book.md#shelf-and-warps"},
	{does: "Studio.TakeNewer", command: "book take-newer", route: "POST /api/documents/{id}/take-newer", manual: "docs/book.md#shelf-and-warps"},
	{does: "Studio.WhereFrom", command: "book where-from", route: "GET /api/documents/{id}/origins", manual: "docs/book.md#shelf-and-warps"},
	{does: "Studio.PutOnShelf", command: "book put-on-shelf", route: "POST /api/documents/{id}/put-on-shelf", manual: "docs/book.md#shelf-and-warps"},
	{does: "Studio.Parts", because: completes},
	{does: "YarnPart", because: completes},

	// Work on a warp.
	{does: "Studio.Start", command: "book start", route: "POST /api/documents/{id}/start", manual: "docs/book.md#work-on-a-warp"},
	{does: "Studio.Amend", command: "book amend", route: "POST /api/documents/{id}/amend", manual: "docs/book.md#work-on-a-warp"},
	{does: "Studio.Frozen", route: "GET /api/documents/{id}/frozen", because: "commands reckon it, as WarpSource"},
	{does: "Studio.WarpSource", command: "sheet", route: "GET /api/documents/{id}/reckoning", sheet: "glance", manual: "docs/book.md#from-an-empty-book-to-a-printed-sheet"},
	{does: "Studio.Logged", command: "book log", route: "POST /api/documents/{id}/log", manual: "docs/book.md#work-on-a-warp"},
	{does: "Studio.Wove", command: "book woven", route: "POST /api/documents/{id}/woven", manual: "docs/book.md#work-on-a-warp"},
	{does: "Studio.Measured", command: "book measure", route: "POST /api/documents/{id}/measurements", manual: "docs/book.md#work-on-a-warp"},
	{does: "Studio.Record", command: "book record", route: "GET /api/documents/{id}/record", manual: "docs/book.md#what-came-of-it"},
	{does: "Studio.Records", command: "book records", route: "GET /api/records", manual: "docs/book.md#what-came-of-it"},
	{does: "Studio.Measurable", because: completes},
	{does: "MeasuredStates", because: completes},
}

// completes is why a list of values has no command of its own.
const completes = "what can be typed there: commands complete it"
