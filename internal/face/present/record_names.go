package present

import (
	"sley/internal/trade/record"
)

// KindName says what a document is: a warp, a yarn, a loom, a draft.
func KindName(k record.Kind) string { return kindNames[k][0] }

// KindNames says what several documents of a kind are.
func KindNames(k record.Kind) string { return kindNames[k][1] }

// StageOf says where the work of a warp stands; nothing where it is no stage.
func StageOf(stage string) string { return stageNames[stage] }

// Act says what made a version.
func Act(a record.Act) string { return actNames[a] }

// Topic says what entries of a topic are about.
func Topic(t record.Topic) string { return topicNames[t] }

// What says what happened, by the word that an entry keeps.
func What(what string) string { return whatNames[what] }

// Weave says what handbooks call a weave that drafts are found by; what is none of
// those is said as it stands.
func Weave(slug string) string {
	if name, ok := weaveNames[slug]; ok {
		return name
	}
	return slug
}
