package block

// systems are all there are.
var systems = []*System{
	turned("turned-twill-3", []int{0, 1, 2}),
	turned("turned-twill-4", []int{0, 1, 2, 3}),
	turned("turned-broken-twill", []int{0, 2, 1, 3}),
	turned("turned-satin-5", []int{3, 0, 2, 4, 1}),
	turned("turned-satin-8", []int{1, 4, 7, 2, 5, 0, 3, 6}),
	huck("huck", false),
	huck("huck-lace", true),
	huckHalves(),
	bronsonLace(),
	spotBronson(),
	overshot(),
	monksBelt(),
	summerAndWinter(),
	taquete(),
	crackle(),
	doubleCloth(),
	rep(),
}
