package present

import (
	"fmt"
	"maps"
	"slices"
	"strings"
	"unicode/utf8"

	"sley/internal/engine/reckon"
	"sley/internal/trade/problem"
	"sley/internal/trade/qty"
)

// words say one code to people: what is wrong, why where that is not plain,
// and what to do. In lower case and without a full stop; {name} stands for an
// Arg of the problem, {read} for what was read.
type words struct{ wrong, why, fix string }

// tables hold the words of every code, by the floor that finds the problem.
var tables = slices.Concat(inputTables, actionTables, []map[string]words{checkWords, dressingCheckWords, contentWords, wifWords, strokeWords})

// inputTables are of what is wrong with the text of a plan file.
var inputTables = []map[string]words{fileWords, planWords, windingWords, quantityWords, yarnWords, orderWords, draftWords, catalogueWords, documentWords}

// actionTables are of what is wrong with what is asked of a book.
var actionTables = []map[string]words{bookWords, tableWords}

// wordsFor gives the words of a code. A code without words is our own mistake,
// which TestEveryCodeHasWords finds.
func wordsFor(code string) words {
	if w, ok := wordsOf(code); ok {
		return w
	}
	return words{wrong: code, fix: "nothing is known about this problem: please report it"}
}

// wordsOf gives the words of a code, if it is one.
func wordsOf(code string) (words, bool) {
	for _, table := range tables {
		if w, ok := table[code]; ok {
			return w, true
		}
	}
	return words{}, false
}

// Codes lists every code that has words, in alphabetical order.
func Codes() []string { return codesOf(tables) }

// InputCodes lists those of what is wrong with the text of a plan file.
func InputCodes() []string { return codesOf(inputTables) }

// ActionCodes lists those of what is wrong with what is asked of a book.
func ActionCodes() []string { return codesOf(actionTables) }

func codesOf(tables []map[string]words) []string {
	var codes []string
	for _, table := range tables {
		codes = slices.AppendSeq(codes, maps.Keys(table))
	}
	slices.Sort(codes)
	return codes
}

// fill puts the Args of a problem into the words.
func fill(text string, p problem.Problem) string {
	if !strings.Contains(text, "{") {
		return text
	}
	pairs := []string{"{read}", short(p.Read)}
	for _, name := range slices.Sorted(maps.Keys(p.Args)) {
		value := say(p.Args[name])
		if name == "system" || name == "entry" { // ids of the catalogue
			value = Catalogue(value).Name
		}
		pairs = append(pairs, "{"+name+"}", value)
	}
	return fillIn(text, pairs...)
}

// longest is how many characters of what was read are quoted.
const longest = 60

// short gives what was read on one line, cut when it is long.
func short(read string) string {
	read = legible(strings.Join(strings.Fields(read), " "))
	if utf8.RuneCountInString(read) <= longest {
		return read
	}
	return string([]rune(read)[:longest-1]) + "…"
}

// say writes one Arg.
func say(value any) string {
	switch v := value.(type) {
	case string:
		return short(v)
	case []string:
		return strings.Join(v, ", ")
	case []reckon.Uneven:
		return unevenStripes(v)
	case qty.Rat:
		return v.Short(6)
	case qty.LinearDensity:
		return v.Tex().Short(1) + " tex"
	}
	return fmt.Sprint(value)
}
