package present

import "sley/internal/trade/record"

// troubleWords say why the book, or something in it, could not be had: what is so, and
// what to do. {path}, {address}, {pid}, {found}, {known}, {copy} and {err} come from the
// trouble; what stands between « and » is said only where all of it is known.
var troubleWords = map[string]words{
	record.InUse:        {"the book {path} is in use« by another sley, process {pid}»«, whose page is at {address}»", "", "work in that page, or close that sley first; list, show, copy and export read the book meanwhile"},
	record.Newer:        {"the book {path} was written by a newer sley« (version {found}; this one knows {known})»", "", "use the newer sley; nothing was changed"},
	record.Older:        {"the book {path} is of an older version, and was not brought to this one yet", "", "open it once with this sley while nobody else has it: a copy is made first"},
	record.NotABook:     {"{path} is not a book", "", "look at the name behind --book; nothing was changed"},
	record.Damaged:      {"something in the book« {path}» is damaged«: {found}»", "", "stop working in it« and put back the copy {copy}: sley book restore», or export what can still be read"},
	record.Full:         {"nothing more can be written to {path}«: {err}»", "the disk is full, or fails", "make room on the disk and try again; what was answered before is safe"},
	record.ReadOnly:     {"{path} cannot be changed here«: {err}»", "", "look whether the file and its folder may be written by you, and whether another sley has the book"},
	record.Missing:      {"there is no book {path}", "", "«put back the copy {copy} with sley book restore, or »make one with sley book new, or name another with --book"},
	record.Exists:       {"{path} is there already", "", "write to another name: nothing that is there is replaced"},
	record.NoJournal:    {"the folder of {path} cannot keep the journal that makes changes safe", "drives on a network often cannot", "keep the book on a disk of this machine, and name it with --book"},
	record.NotFound:     {"the book has no such thing« ({found})»", "", "look for it with sley book list and sley book history"},
	record.Changed:      {"another changed it meanwhile«: it has version {found} now»", "", "look at it anew and try again"},
	record.Unreadable:   {"{path} cannot be read«: {err}»", "", "look whether it is a file and whether you may read it"},
	record.Unforeseen:   {"the book complains of something unforeseen«: {found}»", "", "try again; when it comes back, please report this line"},
	record.Closed:       {"the book is closed", "", "start sley again"},
	record.FolderFailed: {"the folder {path} cannot be made or read«: {err}»", "", "look whether you may write there, or name another place"},
}
