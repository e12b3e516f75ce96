package present

// orderWords are for orders of stripes, picks, threadings and treadlings.
var orderWords = map[string]words{
	"order.empty":          {"the order, or a bracket in it, is empty", "", "write threads in it, as \"blue 12, white 4\" or \"1 2 3 4\""},
	"order.unexpected":     {"\"{read}\" is not expected here", "", "write yarns with their counts, as \"(blue 12, white 4) x 6, blue 12\", or shafts, as \"(1 2 3 4) x fill\""},
	"order.unclosed":       {"the bracket that opens here is never closed", "", "write ) where the group ends"},
	"order.too-deep":       {"more than {most} groups lie inside one another", "", "write some of them out"},
	"order.too-long":       {"the order has more than {most} threads", "", "look at the counts"},
	"order.count-missing":  {"\"{read}\" has no number", "", "write how many, as \"blue 12\" or \"x 6\""},
	"order.count-zero":     {"a count of 0 puts in nothing", "", "write at least 1, or leave it out"},
	"order.count-large":    {"{read} is more than {most}, the most for one count", "", "look at the number"},
	"order.digits-grouped": {"\"{read}\" could be one number or two", "", "leave out the comma for one, or write a space after it for two"},
	"order.name-missing":   {"\"{read}\" does not say of which yarn", "", "write the yarn with its count, as \"blue 12\"; a group is repeated by x, as \"edge x 2\""},
	"order.name-unknown":   {"\"{read}\" is no yarn or group of this plan", "", "the names are {valid}"},
	"order.name-twice":     {"\"{read}\" is both a yarn and a group", "", "give one of them another name"},
	"order.shaft-range":    {"\"{read}\" is not a shaft from {least} to {most}", "", "write the numbers of shafts"},
	"order.treadle-range":  {"\"{read}\" is not a number from {least} to {most}", "", "write the numbers of treadles, or of shafts in a lift plan"},
	"order.beam":           {"\"{read}\" does not lead to a beam", "", "write on beam 1 or on beam 2"},
	"order.density":        {"\"{read}\" after at is no density", "", "write the density as 36 epi"},
	"order.fill-twice":     {"a second group is to fill the width", "", "let one group fill, and give the other a number"},
	"order.fill-nested":    {"x fill is not the last thing said of a group of the whole order", "", "write x fill last, and outside other brackets, as \"blue 4, (blue 12, white 4) x fill, blue 4\""},
	"order.group-circle":   {"the groups call one another without end: {circle}", "", "take one of the names out"},
	"order.group-empty":    {"the group \"{read}\" has no threads", "", "write its order below [groups]"},
}
