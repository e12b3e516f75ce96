package present

// draftWords are for the texts of weaves and for drafts.
var draftWords = map[string]words{
	"weave.sign":   {"\"{read}\" stands for neither thread", "", "write # where the warp is on top and . where the weft is, a line for each pick"},
	"weave.uneven": {"this pick crosses {ends} ends, the first one {want}", "", "write as many signs in every line"},
	"weave.empty":  {"the weave has no pick", "", "write a line of # and . for each pick, as \"#. / .#\""},
	"weave.large":  {"the text has more than {most} characters", "", "look whether this is a weave"},
}
