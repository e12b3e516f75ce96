package present

// documentWords are for what is wrong with a plan as a JSON document, and with
// the path of one of its values.
var documentWords = map[string]words{
	"document.large": {"the plan would take {size} bytes, more than {most}", "", "a plan holds one warp: take out what does not belong to it"},
	"text.not-utf8":  {"the text is not UTF-8", "", "write it in the encoding UTF-8"},
	"json.syntax":    {"the JSON cannot be read on from \"{read}\" at byte {at} ({says})", "", "write it as JSON there"},
	"json.object":    {"the document is {found}, not an object", "", "write an object of keys and values, as {\"sley\": 1}"},
	"json.half":      {"{read} at byte {at} is half of a character alone", "", "write the character itself, or both of its halves"},
	"json.null":      {"null is no value of a plan", "", "leave the key out"},
	"json.twice":     {"the key \"{read}\" stands twice in one object", "", "leave out one of the two"},
	"json.number":    {"{read} is larger than numbers of a plan can be", "", "write a whole number of 64 bits or a decimal number of the usual size, or a text in quotes"},
	"path.syntax":    {"\"{read}\" is no path: it cannot be read on from character {at}", "", "write keys with full stops between them and items by their number from 0, as pieces[0].length; a key with a full stop or a bracket inside stands in quotes, as yarns.\"a.b\".count"},
	"path.empty":     {"there is no path", "", "write where the value belongs, as pieces[0].length"},
	"path.through":   {"\"{read}\" is {found}, and nothing lies below it", "", "write a value in its place, or take it out first"},
	"path.list":      {"a list stands here, and \"{read}\" is no number of one of its items", "", "write the number of the item in brackets, from 0, as pieces[0].length"},
	"path.table":     {"a table stands here, and its values have keys and no numbers", "", "write the key behind a full stop, as warp.sett"},
	"path.index":     {"{read} lies beyond the end of a list of {length}", "items are counted from 0", "write a number that the list has; the next new item has the number {length}"},
	"path.item":      {"\"{read}\" is not an item of a list", "", "write the path of an item, as pieces[0]"},
	"path.nothing":   {"nothing stands at {read}", "", "write the path of a value that the plan has"},
	"value.none":     {"there is no value to write", "", "write a value, or remove the key"},
}
