package planfile

import "slices"

// home gives the table where the key would be right, when just one has it and
// it is another than the one it was found in: keys written below a [header]
// belong to that table, which surprises people.
func home(found, key string) string {
	var homes []string
	for name, valid := range keys {
		if slices.Contains(valid, key) && name != found && name != pieceLinks && name != sampleTable {
			homes = append(homes, name)
		}
	}
	if len(homes) != 1 {
		return ""
	}
	if words, ok := shownBy[homes[0]]; ok {
		return words
	}
	return tableName(homes[0])
}
