package present

import (
	"maps"
	"slices"
)

// CatalogueWords say an entry of the catalogue of weaves: the trade's name, what it
// is, and what it is for.
type CatalogueWords struct{ Name, Is, Use string }

// CatalogueFamily gives the words of a family by its id.
func CatalogueFamily(id string) CatalogueWords { return familyWords[id] }

// Catalogue gives the words of an entry, which are those of a system of blocks too, by
// its id. Of an id without words it gives the id as name.
func Catalogue(id string) CatalogueWords {
	for _, table := range catalogueTables {
		if w, ok := table[id]; ok {
			return w
		}
	}
	return CatalogueWords{Name: id}
}

// CatalogueParam gives the name of an entry's parameter and what it means; without
// words, the parameter's id.
func CatalogueParam(entry, param string) (name, says string) {
	for _, key := range []string{entry + " " + param, param} {
		if w, ok := paramWords[key]; ok {
			return w.name, w.says
		}
	}
	return param, ""
}

// CatalogueOption gives the words of one choice of a parameter.
func CatalogueOption(option string) string {
	if words, ok := optionWords[option]; ok {
		return words
	}
	return option
}

// CatalogueSett says what the sett of an entry goes by, by the name of its basis.
func CatalogueSett(basis string) string { return settWords[basis] }

// CatalogueKeys lists what of the catalogue has words: entries, parameters by their
// names and those of one entry, and choices.
func CatalogueKeys() []string {
	var keys []string
	for _, table := range catalogueTables {
		keys = slices.AppendSeq(keys, maps.Keys(table))
	}
	keys = slices.AppendSeq(keys, maps.Keys(paramWords))
	keys = slices.AppendSeq(keys, maps.Keys(optionWords))
	slices.Sort(keys)
	return keys
}
