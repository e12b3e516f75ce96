package planfile

import "sley/internal/trade/warp"

// linksOf gives the links of lengths or of widths for which either table has
// an allowance. Links that only the second table has come first.
func linksOf(lengths bool, own, others warp.Allowances) []warp.LinkName {
	var theirs, ours []warp.LinkName
	for _, link := range warp.LinkNames() {
		if link.Width == lengths {
			continue
		}
		if _, ok := own[link.Key]; ok {
			ours = append(ours, link)
		} else if _, ok := others[link.Key]; ok {
			theirs = append(theirs, link)
		}
	}
	return append(theirs, ours...)
}

// slackened gives the links as they are when the tape is read on a slackened
// warp: on the loom is then the same as relaxed.
func slackened(links []warp.LinkName) []warp.LinkName {
	same := func(s warp.State) warp.State {
		if s == warp.OnLoom {
			return warp.Relaxed
		}
		return s
	}
	var out []warp.LinkName
	for _, link := range links {
		link.Link = warp.Link{Later: same(link.Link.Later), Earlier: same(link.Link.Earlier)}
		if link.Link.Later != link.Link.Earlier {
			out = append(out, link)
		}
	}
	return out
}

// circleIn gives the keys of the first circle among the links, the one that
// closes it last; nil when there is none. States are joined one link after
// another: a link between two states that are joined already closes a circle.
func circleIn(links []warp.LinkName) []string {
	for i, link := range links {
		if way := wayBetween(links[:i], link.Link.Later, link.Link.Earlier, nil); way != nil {
			return append(way, link.Key)
		}
	}
	return nil
}

// wayBetween gives the keys of the links that lead from one state to another
// without going over a link twice; nil when none do.
func wayBetween(links []warp.LinkName, from, to warp.State, gone []string) []string {
	if from == to {
		return gone
	}
	for i, link := range links {
		next := warp.Unsaid
		switch from {
		case link.Link.Later:
			next = link.Link.Earlier
		case link.Link.Earlier:
			next = link.Link.Later
		default:
			continue
		}
		rest := append(append([]warp.LinkName{}, links[:i]...), links[i+1:]...)
		if way := wayBetween(rest, next, to, append(gone, link.Key)); way != nil {
			return way
		}
	}
	return nil
}
