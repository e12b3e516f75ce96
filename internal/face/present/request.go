package present

// OurFault says that something broke which no person did.
func OurFault() string {
	return "this is our fault, not yours; what you saved is safe in the book. Please send us the report below"
}

// Refusal says why a request to the page's server was not let through, and what to do.
func Refusal(code string) (says, fix string) {
	words := requestWords[code]
	return words[0], words[1]
}

// RefusalCodes lists the codes that Refusal has words for.
func RefusalCodes() []string {
	var out []string
	for code := range requestWords {
		out = append(out, code)
	}
	return out
}
