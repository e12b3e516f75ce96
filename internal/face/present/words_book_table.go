package present

// bookWords are for what is wrong with what a weaver asks of her book.
var bookWords = map[string]words{
	"document.none":       {"the book has no {kind} called \"{read}\"", "", "sley book list shows what it has; a document is named by its name or its number"},
	"document.several":    {"the book has more than one {kind} called \"{read}\"", "", "name it by its number: {valid}"},
	"document.unreadable": {"the document cannot be read here ({error})", "", "return to an earlier version of it, and report this: the book should never hold such a document"},
	"name.missing":        {"there is no name", "", "write what it is to be called"},
	"name.long":           {"the name \"{read}\" goes on for more than {most} characters", "", "write a shorter one; what else there is to say has its place in a note"},
	"name.control":        {"the name \"{read}\" holds characters that cannot be seen", "", "type the name anew, without tabs and line ends"},
	"path.unknown":        {"\"{read}\" is no value of this document", "", "write one that it has: {valid}"},

	"units.kind": {"\"{read}\" is no kind of quantity that has units to choose from", "", "write one of {valid}"},
	"units.unit": {"\"{read}\" is no unit that figures can be shown in", "", "write one of {valid}, or nothing to show each plan as it was typed"},

	"undo.none":   {"there is nothing before this to undo", "", "remove the document if it is not wanted"},
	"undo.others": {"what was done last was done elsewhere", "undo takes back only what was done here", "look at the history, and return to the version that is wanted"},
	"redo.none":   {"there is nothing to redo here", "", "look at the history, and return to the version that is wanted"},

	"warp.frozen":      {"work on this warp began, and this value of its plan changes no more", "the plan is kept as it was when work began, so that sheets and loom agree", "say under [built] what stands on the loom, or cancel the start"},
	"warp.started":     {"work on this warp began already", "", "amend it, or cancel the start and begin anew"},
	"warp.not-started": {"work on this warp has not begun", "", "start it first; until then the plan itself is changed"},
	"warp.on-the-loom": {"the warp \"{read}\" is on the loom", "", "log it as finished, or cancel its start, and remove it then"},
	"frozen.differs":   {"this number is another now than it was when work began", "the plan was reckoned then by sley {program}, and this sley reckons it otherwise", "go by what is on the loom, and measure before you trust the new number"},

	"event.id":      {"\"{read}\" cannot be the mark of an entry", "", "leave it out, and one is made; else 8 to 64 characters"},
	"event.what":    {"\"{read}\" is nothing that can be entered here", "", "write one of {valid}"},
	"event.counter": {"that entry cancels another, and is not cancelled itself", "", "enter anew what was cancelled by mistake"},
	"start.woven":   {"picks of this warp are woven, so that its start stands", "", "cancel the entries of what was woven first, if they are wrong"},
	"stock.nothing": {"an amount of nothing changes no stock", "", "write how much, as \"250 g\" or \"400 yd\"; measured 0 g says that none is left"},

	"device.none":    {"no phone or tablet was paired as \"{read}\"", "", "sley book devices shows those that were"},
	"device.several": {"more than one phone or tablet is called \"{read}\"", "", "name it by its mark: {valid}"},
	"pairing.none":   {"there is no code to pair by now", "a code is good for five minutes, and for one device", "ask for a new one at the computer"},
	"pairing.code":   {"this is not the code that the computer shows", "", "type the six digits as they stand there; after five wrong ones a new code is needed"},
	"pairing.ended":  {"this was not the code, and it is good no more: five wrong ones were typed", "", "ask for a new one at the computer"},

	"sitting.minutes":     {"\"{read}\" is no time at the loom", "", "write whole minutes, from 1 to {most}"},
	"note.empty":          {"the note is empty", "", "write what is to be remembered"},
	"progress.pick":       {"\"{read}\" is no number of picks", "picks are counted from the start of the warp", "write the number of the last pick that is woven, from 1 to {most}"},
	"measurement.state":   {"\"{read}\" is no state this can be measured in", "", "the states are {valid}"},
	"measurement.nothing": {"a size of nothing was not measured", "", "write the size with its unit, as \"28 1/2 in\" or \"72 cm\""},
	"measurement.path":    {"\"{read}\" is nothing of this plan that can be measured", "", "what can be measured: {valid}"},

	"kind.unknown":    {"\"{read}\" is no kind of piece", "", "the kinds are {valid}"},
	"kind.count":      {"there are not so many pieces on a warp", "", "write a number from 1 to {most}, or none to have the usual number"},
	"kind.units":      {"\"{read}\" is no kind of units", "", "write one of {valid}"},
	"shelf.part":      {"\"{read}\" is no part of a warp that a {kind} can be", "", "the parts are {valid}; NAME is what the plan calls the yarn"},
	"shelf.no-origin": {"\"{read}\" of this warp did not come from the shelf", "", "use one from the shelf, or put this one on it"},

	"change.unknown": {"there is no change of a draft called \"{read}\"", "", "the changes are {valid}"},
	"change.value":   {"the change \"{read}\" cannot be made of this draft", "what stands after = is not what it takes", "write it as {usage}"},
	"change.large":   {"the change \"{read}\" would take more shafts, treadles or threads than there can be", "", "change less at once"},
	"change.tied":    {"the change \"{read}\" cannot be made: a shaft has no treadle of its number", "", "give every lift a treadle first, by the change treadles"},

	"import.missing":    {"there is no file {read} in the folder", "", "take the folder whole, as it was exported"},
	"import.name":       {"\"{read}\" leads out of the folder", "", "take the folder as it was exported: its files lie in it and nowhere else"},
	"import.unreadable": {"the file {read} cannot be read ({error})", "", "look whether the disk or stick is whole, and copy the folder anew"},
	"import.large":      {"the file {read} is larger than {most} bytes", "", "no file of an export is: take the folder as it was exported"},
	"import.json":       {"the file {read} is not what was exported ({error})", "", "edit only plan files, drafts, yarns and looms, and take all else as it was exported"},
	"import.format":     {"the folder is of version {read}, and this program reads version {most}", "", "use a newer sley for this folder"},
	"import.document":   {"the entry \"{read}\" of the list of documents cannot be right", "", "take book.json as it was exported"},
	"import.version":    {"version {read} of this history cannot be right", "", "take the folder history as it was exported"},
	"import.event":      {"the entry \"{read}\" cannot be right", "it is of a document that the folder has not, or holds what no entry can", "take events.json and frozen.json as they were exported"},
	"import.two-ways":   {"\"{read}\" was changed in the book, and otherwise in the folder", "neither may be lost", "export the book to see both, make one what it should be, and take the other out of the folder"},
}
