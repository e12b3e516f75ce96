package present

import (
	"regexp"
	"strings"
	"testing"

	"sley/internal/app"
	"sley/internal/engine/review"
	"sley/internal/trade/problem"
)

var brace = regexp.MustCompile(`\{[a-z-]+\}`)

// Every topic has words, and they name nothing that such a finding does not have.
func TestReviewWords(t *testing.T) {
	args := problem.Args{
		"way": 0, "face": 1, "threads": 11, "limit": 9, "more": 3, "count": 2, "of": 8, "layers": 2, "wanted": 1, "picks": 1, "ends": 7, "shafts": "3+4",
		"up": 3, "side": 1, "caught": 2, "turns": 4, "run": 2, "has": 4, "needs": 6, "shaft": 2, "draft": "rising", "loom": "sinking", "treadles": "5+6", "repeat": 6, "over": 1,
	}
	for _, topic := range review.Topics() {
		got := Findings(&app.Looked{Findings: []review.Finding{{
			Topic: topic, Severity: review.Care, Args: args, Place: review.Place{Ends: review.Span{From: 2, To: 4}, Picks: review.Span{From: 0, To: 1}, Numbers: []int{1, 2}},
		}}})[0]
		if got.Says == "" || brace.MatchString(got.Says+got.Means) {
			t.Errorf("%s: %q, %q", topic, got.Says, got.Means)
		}
		if strings.Contains(got.Says, "-at") {
			t.Errorf("%s has no place: %q", topic, got.Says)
		}
	}
	for _, topic := range review.RemedyTopics() {
		for _, m := range []review.Remedy{{Topic: topic, Ends: 1}, {Topic: topic, Ends: -2}, {Topic: topic, Floating: [2]bool{true, true}}} {
			if says := remedySays(m); says == "" || brace.MatchString(says) {
				t.Errorf("%s: %q", topic, says)
			}
		}
	}
	if len(reviewWords) != len(review.Topics()) || len(remedyWords) != len(review.RemedyTopics()) {
		t.Error("there are words of no topic")
	}
	for _, test := range [][2]string{{"6", "treadle 6 is tied, and never pressed"}, {"5+6", "treadles 5 and 6 are tied, and never pressed"}, {"1+5+6", "treadles 1, 5 and 6 are tied, and never pressed"}} {
		f := review.Finding{Topic: review.IdleTreadles, Args: problem.Args{"treadles": test[0]}}
		if got := finding(f).Says; got != test[1] {
			t.Errorf("%q, want %q", got, test[1])
		}
	}
	for _, test := range []struct {
		s    review.Span
		want string
	}{{review.Span{}, ""}, {review.Span{From: 4, To: 5}, "end 5"}, {review.Span{From: 4, To: 8}, "ends 5 to 8"}} {
		if got := stretchWords(test.s, "end"); got != test.want {
			t.Errorf("%v: %q, want %q", test.s, got, test.want)
		}
	}
}
