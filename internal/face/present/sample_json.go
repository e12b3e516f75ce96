package present

import (
	"sley/internal/app"
	"sley/internal/trade/record"
)

// SampleJSON is the documented shape of a sample of a yarn (docs/json.md).
type SampleJSON struct {
	Name   string           `json:"name"`
	Weave  string           `json:"weave,omitempty"`
	Wash   string           `json:"wash,omitempty"`
	Sizes  []SampleSizeJSON `json:"sizes"` // and densities, as they were typed
	Learnt []LearntJSON     `json:"learnt"`
}

// SampleSizeJSON is what was measured of a sample, by its key in the plan file.
type SampleSizeJSON struct {
	Key   string `json:"key"`
	Says  string `json:"says"`
	Typed string `json:"typed"`
}

// SamplesJSON is the shape of the samples of a yarn.
type SamplesJSON struct {
	Format  int          `json:"format"`
	ID      record.ID    `json:"id"`
	Samples []SampleJSON `json:"samples"`
}

// SamplesJSONOf gives the shape of the samples of a yarn.
func SamplesJSONOf(id record.ID, all []app.Sampled) SamplesJSON {
	out := SamplesJSON{1, id, []SampleJSON{}}
	for _, s := range all {
		shape := SampleJSON{Name: s.Name, Weave: s.Weave, Wash: s.Wash, Sizes: []SampleSizeJSON{}, Learnt: []LearntJSON{}}
		for _, m := range sampleMeasures(s) {
			if m.Typed != "" {
				shape.Sizes = append(shape.Sizes, m)
			}
		}
		for _, l := range s.Learnt {
			shape.Learnt = append(shape.Learnt, learntOf(l))
		}
		out.Samples = append(out.Samples, shape)
	}
	return out
}

// sampleMeasures are the sizes of a sample in the order of its keys.
func sampleMeasures(s app.Sampled) []SampleSizeJSON {
	return []SampleSizeJSON{
		{"sett", "sett in the reed", s.Sett.Typed},
		{"picks", "picks on the loom", s.Picks.Typed},
		{"warp", "length of warp", s.Warp.Typed},
		{"on-loom", "length on the loom", s.OnLoom.Typed},
		{"relaxed", "length relaxed", s.Relaxed.Typed},
		{"washed", "length washed", s.Washed.Typed},
		{"reed", "width in the reed", s.Reed.Typed},
		{"fell", "width at the fell", s.Fell.Typed},
		{"width-relaxed", "width relaxed", s.WidthRelaxed.Typed},
		{"width-washed", "width washed", s.WidthWashed.Typed},
	}
}

// AdvisedJSON is the shape of an allowance that a warp could take.
type AdvisedJSON struct {
	Key   string    `json:"key"`
	Says  string    `json:"says"` // whose it is
	From  string    `json:"from"`
	To    string    `json:"to"`
	Value string    `json:"value"`
	Typed string    `json:"typed"`
	Warp  record.ID `json:"warp,omitempty"` // of a record
}

// AdviceJSON is the shape of the allowances that a warp could take.
type AdviceJSON struct {
	Format int           `json:"format"`
	ID     record.ID     `json:"id"`
	Advice []AdvisedJSON `json:"advice"`
}

// AdviceJSONOf gives the shape of the allowances that a warp could take.
func AdviceJSONOf(id record.ID, all []app.Advised) AdviceJSON {
	out := AdviceJSON{1, id, []AdvisedJSON{}}
	for _, a := range all {
		l := learntOf(a.Learnt)
		out.Advice = append(out.Advice, AdvisedJSON{l.Key, whoseAdvice(a), l.From, l.To, l.Value, l.Typed, a.ID})
	}
	return out
}

// whoseAdvice says whose an allowance is.
func whoseAdvice(a app.Advised) string {
	if a.Sample != "" {
		return "your sample of " + a.Yarn + ": " + a.Sample
	}
	return "your record: " + a.Warp
}
