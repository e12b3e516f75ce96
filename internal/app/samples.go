package app

import (
	"context"
	"slices"

	"sley/internal/engine/learn"
	"sley/internal/trade/record"
	"sley/internal/trade/warp"
	"sley/internal/trade/yarn"
)

// Sampled is a sample of a yarn with what it says.
type Sampled struct {
	yarn.Sample
	Learnt []Learnt
}

// Samples gives the samples of a yarn on the shelf, in the order they are written.
// Trouble: NotFound where there is no such yarn.
func (s *Studio) Samples(ctx context.Context, id record.ID) ([]Sampled, error) {
	var out []Sampled
	err := s.read(ctx, func(r record.Reader) error {
		d, b, err := openDocument(r, id)
		if err == nil && d.Kind != record.Yarn {
			err = &record.Trouble{Code: record.NotFound, Found: string(record.Yarn)}
		}
		if err == nil {
			out = b.samples()
		}
		return err
	})
	return out, err
}

func (b *body) samples() []Sampled {
	y, _ := b.yarn()
	return sampledOf(y)
}

func sampledOf(y yarn.Yarn) []Sampled {
	var out []Sampled
	for _, s := range y.Samples {
		out = append(out, Sampled{s, learn.OfSample(s)})
	}
	return out
}

// Advised is an allowance that a warp could take, and whose it is: of a sample of a yarn,
// or of a warp that is finished.
type Advised struct {
	Learnt
	Yarn, Sample string // of a sample: the yarn, as the shelf or else the plan calls it
	Warp         string // of a record: what the warp is called
	ID           record.ID
	Path         string // of a record: whose sizes say it
}

// Advice gives the allowances that the samples of a warp's yarns say, and the records of
// finished warps in the same fibre, the newest first and at most five for each allowance.
// Trouble: NotFound where there is no such warp.
func (s *Studio) Advice(ctx context.Context, id record.ID) ([]Advised, error) {
	var out []Advised
	err := s.read(ctx, func(r record.Reader) error {
		d, b, err := openDocument(r, id)
		if err == nil && d.Kind != record.Warp {
			err = &record.Trouble{Code: record.NotFound, Found: string(record.Warp)}
		}
		if err != nil {
			return err
		}
		plan := b.reckon().plan
		if out, err = sampleAdvice(r, b, plan); err != nil {
			return err
		}
		more, err := recordAdvice(r, d.ID, plan)
		out = append(out, more...)
		return err
	})
	return out, err
}

// sampleAdvice is what the samples of the plan's yarns say, and those that the shelf they
// came from has besides.
func sampleAdvice(r record.Reader, b *body, plan *warp.Plan) ([]Advised, error) {
	var out []Advised
	for _, y := range plan.Yarns {
		called, samples := y.Name, sampledOf(y)
		if o := b.originOf(YarnPart(y.Name)); o != nil {
			name, more, err := onShelf(r, o.Mark)
			if err != nil {
				return nil, err
			}
			if name != "" {
				called = name
			}
			for _, s := range more {
				if !slices.ContainsFunc(samples, func(have Sampled) bool { return have.Name == s.Name }) {
					samples = append(samples, s)
				}
			}
		}
		for _, s := range samples {
			for _, l := range s.Learnt {
				out = append(out, Advised{Learnt: l, Yarn: called, Sample: s.Name})
			}
		}
	}
	return out, nil
}

// onShelf is what the shelf calls a yarn and which samples it has; nothing of one that the
// book has no more.
func onShelf(r record.Reader, mark string) (string, []Sampled, error) {
	on, err := r.Marked(mark)
	if record.Is(err, record.NotFound) {
		return "", nil, nil
	}
	if err != nil {
		return "", nil, err
	}
	_, b, err := openDocument(r, on.ID)
	if err != nil {
		return "", nil, err
	}
	return on.Name, b.samples(), nil
}
