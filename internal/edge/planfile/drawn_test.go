package planfile

import (
	"strings"

	"pgregory.net/rapid"
)

// drawnKeys are keys of the format, names of the weaver's own, and keys that
// every writing has to quote or escape.
var drawnKeys = rapid.OneOf(
	rapid.SampledFrom([]string{
		"sley", "name", "pieces", "yarns", "warp", "weft", "loom", "sett", "first", "hem", "fringe", "length",
		"count", "shares", "find", "what", "built", "woven", "extras", "groups", "white", "a.b", "x[0]", "",
		"å", "half = whole", `"`, `\`, "two\nlines", "1", "\x7f",
	}),
	rapid.StringN(0, 6, -1),
)

// drawnTexts are texts as people and pages write them, and worse ones.
var drawnTexts = rapid.OneOf(
	rapid.SampledFrom([]string{
		"30 i", "24 epi", "", " ", "two\nlines", "\n", "ends in a quote\"", "\"\"\"\n\"\"\"\"\"", `a\b`, "a\\\nb", "tab\there",
		"a \n b\n", "\x00\x1f\x7f", "\u2028 &<>", "2026-03-01", "6", "true", "{}", "a\rb", "long " + strings.Repeat("x ", 60),
	}),
	rapid.StringN(0, 12, -1),
	rapid.StringOfN(rapid.RuneFrom([]rune("\"\\\n ab")), 0, 12, -1),
)

// drawNode draws a value no deeper than the levels.
func drawNode(t *rapid.T, levels int) *node {
	kinds := 4
	if levels > 0 {
		kinds = 6
	}
	switch rapid.IntRange(0, kinds-1).Draw(t, "kind") {
	case 0, 1:
		return TextValue(drawnTexts.Draw(t, "text")).n
	case 2:
		whole, _ := ValueOf([]byte(rapid.SampledFrom([]string{"0", "6", "-1", "9223372036854775807", "-9223372036854775808"}).Draw(t, "whole")))
		return whole.n
	case 3:
		single, _ := ValueOf([]byte(rapid.SampledFrom([]string{"true", "false", "0.92", "-0.0", "1e5", "1.50", "2.5E-3", "1e-400"}).Draw(t, "single")))
		return single.n
	case 4:
		list := &node{kind: listKind, made: closed, inside: -1}
		for range rapid.IntRange(0, 5).Draw(t, "items") {
			list.add(drawNode(t, levels-1))
		}
		return list
	}
	return drawTable(t, levels)
}

func drawTable(t *rapid.T, levels int) *node {
	table := &node{kind: tableKind, made: closed, inside: -1}
	for range rapid.IntRange(0, 5).Draw(t, "keys") {
		key := drawnKeys.Draw(t, "key")
		if table.child(key) == nil {
			c := drawNode(t, levels-1)
			c.key = key
			table.add(c)
		}
	}
	return table
}

// drawDocument draws a document of any keys.
func drawDocument(t *rapid.T) *Document {
	d := &Document{top: drawTable(t, 4), size: 2}
	if n := d.top.child("sley"); n != nil && n.kind == wholeKind {
		n.text = "1" // of no later version
	}
	d.size = len(d.JSON())
	return d
}

// drawChanged draws a document that is another one with a few changes.
func drawChanged(t *rapid.T, d *Document) *Document {
	c := d.Clone()
	for range rapid.IntRange(0, 4).Draw(t, "changes") {
		path := drawPath(t, c)
		switch rapid.IntRange(0, 2).Draw(t, "change") {
		case 0:
			c.Remove(path)
		default:
			_ = c.Set(path, Value{drawNode(t, 2)}) // what cannot be set is tested elsewhere
		}
	}
	return c
}

// drawPath draws the path of a value, or of one that is not there.
func drawPath(t *rapid.T, d *Document) string {
	paths := pathsBelow(d.top, []string{"", "warp.sett", "pieces[0].length", "extras.new"})
	path := rapid.SampledFrom(paths).Draw(t, "path")
	switch rapid.IntRange(0, 4).Draw(t, "beyond") {
	case 0:
		return join(path, drawnKeys.Draw(t, "key"))
	case 1:
		return itemPath(path, rapid.IntRange(0, 6).Draw(t, "index"))
	}
	return path
}

// pathsBelow adds the paths of everything below n.
func pathsBelow(n *node, paths []string) []string {
	for _, c := range n.items {
		paths = pathsBelow(c, append(paths, c.path()))
	}
	return paths
}
