package reckon

import (
	"sley/internal/trade/qty"
	"sley/internal/trade/warp"
	"sley/internal/trade/yarn"
)

// buy gives the put-ups to buy, what is left, and the cost.
func (r *run) buy(u *yarnUse, y *yarn.Yarn) {
	need := r.afterStock(u, y)
	if need.Is.IsZero() {
		return // all of it is in hand
	}
	pay := need
	if holds, ok := r.holds(u, y); ok && !r.exact() {
		n := r.put(u.id+"put-ups", r.whole(r.div(PutUps, need, holds), qty.Up), warp.Unsaid, u.about)
		bought := r.put(u.id+"bought", r.mul(YarnLength, n, holds), warp.Unsaid, u.about)
		r.put(u.id+"left", r.sub(bought, need), warp.Unsaid, u.about)
		r.costOfPutUps(u, y, n)
		pay = bought
	}
	r.costByWeight(u, y, pay)
}

// afterStock is what must be bought beyond the yarn in hand.
func (r *run) afterStock(u *yarnUse, y *yarn.Yarn) term {
	stock, ok := r.stock(u, y)
	if !ok {
		return u.need
	}
	r.put(u.id+"stock-left", r.sub(stock, u.need), warp.Unsaid, u.about)
	if !r.exact() && u.need.Is.Cmp(stock.Is) <= 0 {
		return r.plain(figure(qty.Rat{}, YarnLength))
	}
	short := r.do(Larger, YarnLength, r.sub(u.need, stock), r.plain(figure(qty.Rat{}, YarnLength)))
	return r.put(u.id+"to-buy", short, warp.Unsaid, u.about)
}

// stock is the length of yarn in hand; a weight is measured by the grist.
func (r *run) stock(u *yarnUse, y *yarn.Yarn) (term, bool) {
	s := y.Stock
	path := "yarns." + u.name + ".stock"
	switch {
	case !s.Given():
		return term{}, false
	case s.Is.Length > 0:
		return r.given(u.id+"stock", figure(s.Is.Length.Rat(), YarnLength), given{path: path, typed: s.Typed, about: u.about}), true
	case u.grist.IsZero():
		return term{}, false
	}
	weight := r.given(u.id+"stock-weight", figure(s.Is.Mass.Rat(), Weight), given{path: path, typed: s.Typed, about: u.about})
	return r.put(u.id+"stock", r.mul(YarnLength, weight, r.shown[u.id+"grist"]), warp.Unsaid, u.about), true
}

// holds is the length of yarn in one put-up.
func (r *run) holds(u *yarnUse, y *yarn.Yarn) (term, bool) {
	p := y.PutUp
	path := "yarns." + u.name + ".put-up"
	switch {
	case !p.Given():
		return term{}, false
	case p.Is.Length > 0:
		return r.given(u.id+"put-up", figure(p.Is.Length.Rat(), YarnLength), given{path: path, typed: p.Typed, about: u.about}), true
	case u.grist.IsZero():
		return term{}, false
	}
	weight := r.given(u.id+"put-up-weight", figure(p.Is.Mass.Rat(), Weight), given{path: path, typed: p.Typed, about: u.about})
	return r.put(u.id+"put-up", r.mul(YarnLength, weight, r.shown[u.id+"grist"]), warp.Unsaid, u.about), true
}

// money gives an amount with its currency's code; signs that stand for one
// currency only are read as it.
func money(m qty.Money) Figure {
	currency := m.Currency
	if code, ok := map[string]string{"€": "EUR", "£": "GBP"}[currency]; ok {
		currency = code
	}
	return Figure{Is: m.Minor, Kind: Money, Currency: currency}
}

func (r *run) costOfPutUps(u *yarnUse, y *yarn.Yarn, n term) {
	if !y.Price.Given() || y.PriceMass > 0 {
		return
	}
	each := r.given(u.id+"price", money(y.Price.Is), given{path: "yarns." + u.name + ".price", typed: y.Price.Typed, about: u.about})
	cost := r.mul(Money, n, each)
	cost.Currency = money(y.Price.Is).Currency
	r.costs = append(r.costs, r.put(u.id+"cost", cost, warp.Unsaid, u.about))
}

// costByWeight prices the yarn that is bought where its price is for a weight.
func (r *run) costByWeight(u *yarnUse, y *yarn.Yarn, pay term) {
	if !y.Price.Given() || y.PriceMass == 0 || u.grist.IsZero() {
		return
	}
	price := r.given(u.id+"price", money(y.Price.Is), given{path: "yarns." + u.name + ".price", typed: y.Price.Typed, about: u.about})
	weight := r.div(Weight, pay, r.shown[u.id+"grist"])
	cost := r.div(Money, r.mul(Money, weight, price), r.plain(figure(y.PriceMass.Rat(), Weight)))
	cost.Currency = money(y.Price.Is).Currency
	r.costs = append(r.costs, r.put(u.id+"cost", cost, warp.Unsaid, u.about))
}

// reckonCost adds what the yarn costs, currency by currency, and the time and
// wage where rates are given.
func (r *run) reckonCost() {
	var currencies []string
	sums := map[string][]term{}
	for _, c := range r.costs {
		if sums[c.Currency] == nil {
			currencies = append(currencies, c.Currency)
		}
		sums[c.Currency] = append(sums[c.Currency], c)
	}
	for _, currency := range currencies {
		r.put("cost.yarn["+currency+"]", r.sum(Money, sums[currency]), warp.Unsaid, About{})
	}
	r.time()
}

// time is things ÷ rate for each work whose rate is given.
func (r *run) time() {
	w := &r.plan.Work
	ends := r.cloth.wound
	var all []term
	for _, work := range []struct {
		name string
		rate qty.Typed[qty.Rate]
		n    term
	}{{"winding", w.Winding, ends}, {"threading", w.Threading, r.cloth.ends}, {"sleying", w.Sleying, ends}, {"weaving", w.Weaving, r.weft.picks}} {
		if !work.rate.Given() || work.rate.Is.IsZero() || work.n.Is.IsZero() {
			continue
		}
		perSecond := work.rate.Is.Things.Div(qty.Int(work.rate.Is.Over))
		rate := r.given("work."+work.name, figure(perSecond, RateOf), given{path: "work." + work.name, typed: work.rate.Typed})
		all = append(all, r.put("time."+work.name, r.div(Seconds, work.n, rate), warp.Unsaid, About{}))
	}
	if len(all) == 0 {
		return
	}
	total := r.put("time", r.sum(Seconds, all), warp.Unsaid, About{})
	if !w.Wage.Given() {
		return
	}
	wage := r.given("work.wage", money(w.Wage.Is), given{path: "work.wage", typed: w.Wage.Typed})
	hours := r.plain(figure(qty.Int(3600), Seconds))
	pay := r.div(Money, r.mul(Money, total, wage), hours)
	pay.Currency = money(w.Wage.Is).Currency
	r.put("cost.work", pay, warp.Unsaid, About{})
}
