package defaults

// Sources lists every source that a default, a rule or a formula names by id.
func Sources() []Source {
	return []Source{
		{"practice", "common practice, no source", Practice},
		{"definition", "the definition of the terms", Practice},
		{"given", "what the weaver wrote", Practice},
		{"d3883", "ASTM D3883-04(2020), Yarn Crimp and Yarn Take-up in Woven Fabrics: take-up is based on the straightened length", Seen},
		{"cnch-ratio", "Conference of Northern California Handweavers, Ratios, Rationale, and Rate of Shrinkage, 2016: divide by what remains", Seen},
		{"taylor-weft", "J. T. Taylor, Cotton Weaving and Designing, 6th ed. 1909, p. 245: weft is reckoned on the width in the reed", Seen},
		{"taylor-satin", "J. T. Taylor, Cotton Weaving and Designing, 6th ed. 1909, p. 427: five-shaft satin contracts 4 %", Seen},
		{"mill-estimate", "mill estimate when nothing is known, warp 10 % (teaching notes on fabric weight, 2011)", Seen},
		{"cotton-swelling", "Collins, Fundamental principles that govern the shrinkage of cotton goods by washing (abstract): up to 10 % and more, most in the first wash", Seen},
		{"linen-wash", "washing test of new and old linen, 18thcstockholm 2017: 6 % and 2.5 %", Seen},
		{"fulling", "samples from one warp fulled, inconsequentialblogger 2022: 17 and 20 % in length, 37 and 15 % in width", Seen},
		{"osterkamp-sett", "Peggy Osterkamp, column Ends per inch: 80 % of the maximum ordinary, 90 % upholstery, 50 to 60 % delicate", Seen},
		{"ashenhurst", "Ashenhurst's rule, ends plus intersections (Complex Weavers study group, 1999)", Seen},
		{"ashenhurst-working", "Ashenhurst's formula (Complex Weavers study group, 1999): few cloths reach the limit, a working sett is about three quarters of it", Seen},
		{"wraps-half", "Gist Yarn, wraps per inch: plain weave half the wraps, twill two thirds", Seen},
		{"osterkamp-wraps", "Peggy Osterkamp, column on Ashenhurst's rule: half the ruler's wraps divided by 0.7 is the closest plain weave", Seen},
		{"tygart-waste", "Tygart Lake Fiber Arts, Calculating warp: 18 in for a table loom, 36 in for a floor loom", Seen},
		{"yarn-systems", "Yarn systems, lehmkuhl-wus.de, 2020: silk such as 20/2 is sold by the metric count, at about 5,000 yd/lb", Seen},
		{"spread", "extra ends spread as evenly as possible (Handwoven, Sleying the reed for specific setts)", Seen},
	}
}
