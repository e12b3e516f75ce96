package app

import (
	"encoding/json"
	"strconv"
	"strings"
)

// SaidActs reads acts as a command says them: each is JSON, or KEY=VALUE with spaces between,
// as "do=mirror part=threading from=0 to=4". put and cells have commas between, a cell is
// PICK:END, and text goes to the end of the act. What is wrong with them ReadActs tells.
func SaidActs(said []string) []byte {
	acts := make([]string, len(said))
	for i, text := range said {
		acts[i] = strings.TrimSpace(text)
		if !strings.HasPrefix(acts[i], "{") {
			acts[i] = asJSON(acts[i])
		}
	}
	return []byte("[" + strings.Join(acts, ",") + "]")
}

func asJSON(act string) string {
	out := map[string]any{}
	for act != "" {
		pair, rest, _ := strings.Cut(act, " ")
		key, value, _ := strings.Cut(pair, "=")
		if key == "text" && rest != "" {
			value, rest = value+" "+rest, ""
		}
		if key != "" {
			out[key] = said(key, value)
		}
		act = strings.TrimSpace(rest)
	}
	data, err := json.Marshal(out)
	if err != nil {
		panic(err) // texts and numbers
	}
	return string(data)
}

// said is a value as its key has it.
func said(key, value string) any {
	switch key {
	case "put":
		return severally(value, numberOr)
	case "blocks":
		return severally(value, func(v string) any { return v })
	case "cells":
		return severally(value, func(v string) any {
			pick, end, _ := strings.Cut(v, ":")
			return []any{numberOr(pick), numberOr(end)}
		})
	case "do", "part", "rule", "text", "shed", "name", "value", "weave", "system", "threading", "treadling", "feet":
		return value
	}
	return numberOr(value)
}

func severally(text string, of func(string) any) []any {
	out := []any{}
	for v := range strings.SplitSeq(text, ",") {
		if v != "" {
			out = append(out, of(v))
		}
	}
	return out
}

// numberOr is a number, true or false, or else the text itself.
func numberOr(text string) any {
	if n, err := strconv.Atoi(text); err == nil {
		return n
	}
	if text == "true" || text == "false" {
		return text == "true"
	}
	return text
}
