package app

import (
	"context"

	"sley/internal/trade/record"
)

// refreshedAtOnce is how many documents are read and analysed in one go.
const refreshedAtOnce = 20

// Refresh finds facts anew of documents that have none of their newest version, or facts
// of an older engine, some at a time; it gives how many those were, 0 when none is left.
// It is for the background: what a list shows meanwhile is older.
func (s *Studio) Refresh(ctx context.Context) (int, error) {
	for _, kind := range record.Kinds() {
		n, err := s.refresh(ctx, kind)
		if n > 0 || err != nil {
			return n, err
		}
	}
	return 0, nil
}

func (s *Studio) refresh(ctx context.Context, kind record.Kind) (int, error) {
	cards := map[record.ID]record.Card{}
	err := s.read(ctx, func(r record.Reader) error {
		ids, err := r.Stale(kind, FactsEngine, refreshedAtOnce)
		for _, id := range ids {
			if cards[id], err = cardAnew(r, id); err != nil {
				return err
			}
		}
		return err
	})
	if err != nil || len(cards) == 0 {
		return 0, err
	}
	return len(cards), s.write(ctx, func(w record.Writer) ([]Changed, error) {
		var changed []Changed
		for id, card := range cards {
			if err := w.PutCard(id, card); err != nil {
				return nil, err
			}
			changed = append(changed, Changed{kind, id, card.Facts.Of, "facts", ""})
		}
		return changed, nil
	})
}

// cardAnew finds the facts of a document as it stands. One that cannot be opened has
// none, and is not looked at again.
func cardAnew(r record.Reader, id record.ID) (record.Card, error) {
	d, err := r.Document(id)
	if err != nil {
		return record.Card{}, err
	}
	stage, err := stageOf(r, d)
	if err != nil {
		return record.Card{}, err
	}
	b, err := openBody(d.Body)
	if err != nil {
		none := d.Card
		none.Facts = record.Facts{Of: d.Version, Engine: FactsEngine, Errors: 1}
		return none, nil
	}
	return b.card(d.Kind, d.Version, stage), nil
}
