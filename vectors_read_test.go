package sley_test

import (
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"sley/internal/trade/qty"
)

const vectorsFolder = "testdata/vectors"

// vector is one row of a table in testdata/vectors.
type vector struct {
	t     *testing.T
	table string
	at    string            // the file and the line
	col   map[string]string // by the names of the columns
}

// readVectors reads a table: comments, the names of the columns, the rows. A
// row that ends early leaves its last columns empty.
func readVectors(t *testing.T, table string, columns []string) []vector {
	t.Helper()
	name := filepath.Join(vectorsFolder, table+".tsv")
	text, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	var out []vector
	headed := false
	for i, line := range strings.Split(strings.TrimSuffix(string(text), "\n"), "\n") {
		fields := strings.Split(line, "\t")
		switch at := filepath.ToSlash(name) + ":" + strconv.Itoa(i+1); {
		case strings.HasPrefix(line, "#"):
		case !headed && !slices.Equal(fields, columns):
			t.Fatalf("%s: the columns are %q, want %q", at, fields, columns)
		case !headed:
			headed = true
		case len(fields) > len(columns):
			t.Fatalf("%s: %d columns, want %d", at, len(fields), len(columns))
		default:
			out = append(out, vector{t, table, at, byColumn(columns, fields)})
		}
	}
	return out
}

func byColumn(columns, fields []string) map[string]string {
	row := map[string]string{}
	for i, f := range fields {
		row[columns[i]] = f
	}
	return row
}

// what says in short what a vector holds.
func (v vector) what() string {
	if v.col["plan"] != "" {
		return v.col["plan"] + " " + v.col["node"] + " in " + v.col["in"]
	}
	return v.col["reed"] + " " + v.col["order"] + " in " + v.col["in"]
}

// number reads a column as a number: 3.5, 103 1/7.
func (v vector) number(column string) qty.Rat {
	n, err := qty.ParseNumber(v.col[column])
	if err != nil {
		v.t.Fatalf("%s: %s %q: %v", v.at, column, v.col[column], err)
	}
	return n
}

// sourcesOf reads the sources by their ids.
func sourcesOf(t *testing.T) map[string]bool {
	t.Helper()
	out := map[string]bool{}
	for _, v := range readVectors(t, "sources", []string{"source", "author", "title", "year", "address"}) {
		if v.col["author"] == "" || v.col["title"] == "" || v.col["address"] == "" || out[v.col["source"]] {
			t.Errorf("%s: a source has its own id, an author, a title and an address", v.at)
		}
		out[v.col["source"]] = true
	}
	return out
}

func (v vector) mustHaveSource(sources map[string]bool) {
	if !sources[v.col["source"]] {
		v.t.Errorf("%s: %q is not in sources.tsv", v.at, v.col["source"])
	}
}

// unitOf gives one unit in the last place of a printed number: 0.01 of 3.50,
// 1 of 40, 1/8 of 20 5/8.
func unitOf(printed string) qty.Rat {
	if _, below, ok := strings.Cut(printed, "/"); ok {
		n, err := strconv.ParseInt(below, 10, 64)
		if err != nil || n < 1 {
			return qty.Rat{}
		}
		return qty.Frac(1, n)
	}
	_, places, _ := strings.Cut(printed, ".")
	unit := qty.Int(1)
	for range places {
		unit = unit.Div(qty.Int(10))
	}
	return unit
}

func half(printed string) qty.Rat { return unitOf(printed).Div(qty.Int(2)) }

// near reports whether a and b differ by no more than within.
func near(a, b, within qty.Rat) bool { return !within.Less(a.Sub(b).Abs()) }

// TestVectorsAreWhole holds that every plan file and every source is used.
func TestVectorsAreWhole(t *testing.T) {
	used := map[string]bool{}
	for table, columns := range vectorTables {
		for _, v := range readVectors(t, table, columns) {
			used["source "+v.col["source"]] = true
			used["plan "+v.col["plan"]] = true
		}
	}
	for id := range sourcesOf(t) {
		if !used["source "+id] {
			t.Errorf("sources.tsv: nothing is from %s", id)
		}
	}
	plans, err := os.ReadDir(filepath.Join(vectorsFolder, "plans"))
	if err != nil {
		t.Fatal(err)
	}
	for _, file := range plans {
		if name := strings.TrimSuffix(file.Name(), ".toml"); !used["plan "+name] {
			t.Errorf("plans/%s: no figure is read from it", file.Name())
		}
	}
}
