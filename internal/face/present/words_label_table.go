package present

import "sley/internal/engine/content"

// contentWords are for what must be known before a label can be written.
var contentWords = map[string]words{
	"content.no-grist":     {"nothing says how heavy {yarn} is", "the label is by weight", "write its count, or a skein that you measured and weighed"},
	"content.no-fibre":     {"nothing says what {yarn} is made of", "", "write its fibre, as \"cotton\" or \"cotton 60 %, linen 40 %\""},
	"content.blend":        {"\"{read}\" does not say how much of each fibre is in {yarn}", "a label needs the shares of {fibres}", "write the shares from the yarn's label as its fibre, as \"cotton 60 %, linen 40 %\""},
	"content.nothing":      {"no yarn is in the cloth", "", "name the yarns of warp and weft, with count and fibre"},
	"content.grease":       {"{yarn} is not said to be scoured", "its grease counts as wool on the label", "wash a skein, weigh it again and write scoured = true"},
	"content.no-allowance": {"the rules agree on no moisture for {fibre}, in {yarn}", "it is counted as it was weighed, and its dry share is not right", "ask where you sell under which name and with which allowance it is labelled"},
}

// formNames say whose rules a label follows.
var formNames = map[content.Form]string{
	content.EU: "European form", content.US: "United States form",
}

// formRules cite the rules.
var formRules = map[content.Form]string{
	content.EU: "Regulation (EU) No 1007/2011, consolidated text of 1 July 2013",
	content.US: "16 CFR part 303",
}

// labelNotes say what the rules have on such a label.
var labelNotes = map[content.Topic]string{
	content.Pure:       "“Pure {name}” may be said as well: up to {limit} of other fibre may be in it by accident, not on purpose (article 7).",
	content.Union:      "A cotton warp with a linen weft of at least {limit} of the whole may be called “cotton linen union”, followed by “pure cotton warp – pure linen weft” (article 9).",
	content.Decoration: "Where {name} is only decoration that can be seen and taken out, up to {limit} of it need not be counted (article 10).",
	content.Metal:      "Where {name} only carries off charges, up to {limit} of it need not be counted (article 10).",
	content.Within:     "An analysis may differ from the label by {limit}.",
	content.Small:      "{name} is below {limit} and is not named. If it does something in the cloth, such as making it stretch, name it with its share.",
	content.Virgin:     "“Virgin wool” may be said only of wool that was in no product before, with at most {limit} of other fibre in it by accident (article 8).",
	content.OtherMoist: "The shares are those of the European form in whole per cents. The moisture usual there (ASTM D1909) is less for wool and for some bast fibres, which makes a small difference.",
}

const (
	labelOther    = "Other Fiber"
	labelOthers   = "Other Fibers"
	labelCheck    = "Check your local rule: what must stand on a label, when, and in which language differs by country and by how the cloth is sold. sley reckons; who sells the cloth answers for its label."
	labelWhole    = "By weight of what is in the cloth: warp in the pieces with their fringes, and weft as laid; no thrums, loom waste, gaps, samples or reserves."
	labelShelf    = "Yarn is counted as it is weighed on the shelf, with the moisture it holds there. For dry shares that is taken off, weight ÷ (1 + allowance); for the label the allowances agreed in Annex IX of the Regulation are put back. Shares are rounded by largest remainder, so that they come to 100."
	labelScoured  = "{yarns}: weighed scoured."
	labelGrease   = "{yarns}: not said to be scoured, counted with the grease."
	labelAssumed  = "{fibre}: the rules have more than one allowance, and the yarn does not say which holds; {share} is taken."
	labelSource   = "Temperatures are those of care labels (GINETEX, ISO 3758); which fibre bears which is common practice, no source."
	labelNoFibre  = "No fibre is known, so nothing is said of its care."
	labelTitle    = "Label of {name}"
	labelCare     = "Care"
	labelInCloth  = "In the cloth"
	labelShares   = "Fibres"
	labelBasis    = "How it was counted"
	labelNothing  = "There is no label yet."
	labelDryShare = "{dry} of the dry weight"
)

// Care in the order in which care labels have it: wash, bleach, dry, iron.
var (
	washWords = map[content.Handling]string{
		content.NoWater: "Do not wash in water: air it, brush it, or have it cleaned.",
		content.Hand:    "Wash by hand without rubbing or wringing, at most {most}.",
		content.Mild:    "Wash gently, at most {most}.",
		content.Normal:  "Wash at most {most}.",
	}
	firstWords = map[content.First]string{
		content.WasFulled: "It was fulled: warm water and rubbing would full it further.",
		content.NotWashed: "It was not washed after weaving: the first wash will draw it in.",
	}
	ironWords = map[int]string{110: "cool", 150: "warm", 200: "hot"}
)

const (
	careBleach  = "Do not bleach."
	careNoDryer = "Dry hanging, not in a dryer."
	careFlat    = "Dry lying flat, not in a dryer."
	careDryer   = "A dryer may be used, at most {most}."
	careNoIron  = "Do not iron."
	careIron    = "Iron {how}, at most {most}."
	careDamp    = "Iron {how} while it is damp, at most {most}."
	careWhy     = "because of the {fibre}"
)
