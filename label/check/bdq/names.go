package bdq

import (
	"regexp"
	"strings"

	"cornerslip/label"
	"cornerslip/label/check"
	"cornerslip/label/name"
)

// nameTests are those of the plant's name that no list answers.
func nameTests() []Test {
	return []Test{
		{
			Label: "VALIDATION_POLYNOMIAL_CONSISTENT", GUID: "17f03f1f-f74d-40c0-8071-2927cfc9487b", Kind: KindValidation,
			Doc: "genericName, specificEpithet and infraspecificEpithet, where filled in, are those of scientificName", Acts: []string{"scientificName", "genericName", "specificEpithet", "infraspecificEpithet"},
			Answer: func(c *Cells) Response {
				if c.Empty("scientificName") || c.Empty("genericName") && c.Empty("specificEpithet") && c.Empty("infraspecificEpithet") {
					return internalNotMet
				}
				term, _ := otherName(c)
				return complies(term == "")
			},
			rule: speech{
				severity: label.Warning,
				speak: func(c *Cells, say func(term, message, suggest string)) {
					term, is := otherName(c)
					if is == "" {
						say(term, "scientificName has none: correct one of the two", "")
						return
					}
					say(term, "scientificName says "+is+": correct one of the two", is)
				},
				// The epithets have a rule of their own, which knows more of names.
				only:    func(c *Cells) bool { return !c.Empty("genericName") },
				quiet:   func(c *Cells, _ *check.Context) bool { term, _ := otherName(c); return term != "genericName" },
				example: check.With("genericName", "Satureja"), counterexample: check.With("genericName", "Thymus", "specificEpithet", "capitellatus"),
			},
		},
		{
			Label: "VALIDATION_SCIENTIFICNAMEID_COMPLETE", GUID: "6eeac3ed-f691-457f-a42e-eaa9c8a71ce8", Kind: KindValidation,
			Doc: "scientificNameID is a whole identifier: an LSID, another URN, a scope and a value, or an address with a path", Acts: []string{"scientificNameID"},
			Answer: func(c *Cells) Response {
				if c.Empty("scientificNameID") {
					return internalNotMet
				}
				return complies(wholeIdentifier(c.Text("scientificNameID")))
			},
			rule: speech{
				message: "not a whole identifier, such as urn:lsid:ipni.org:names:457166-1",
				example: check.With("scientificNameID", "457166-1"), counterexample: check.With("scientificNameID", "urn:lsid:ipni.org:names:457166-1"),
			},
		},
	}
}

// otherName returns the first term that is not a part of scientificName, and
// what stands there instead.
func otherName(c *Cells) (term, is string) {
	n := name.Parse(c.trimmed("scientificName"), name.Parts{})
	genus, epithet, infra := n.Genus, n.Epithet, n.Infraspecific
	if genus == "" {
		// Not written as names are; the words still have their order.
		w := strings.Fields(c.trimmed("scientificName"))
		for i, to := range []*string{&genus, &epithet, &infra} {
			if i < len(w) {
				*to = w[i]
			}
		}
	}
	if infra == "" && epithet != "" {
		_, rest, _ := strings.Cut(c.trimmed("scientificName"), epithet)
		if m := qualified.FindStringSubmatch(rest); m != nil {
			infra = m[1]
		}
	}
	for _, p := range [...]struct{ term, is string }{{"genericName", genus}, {"specificEpithet", epithet}, {"infraspecificEpithet", infra}} {
		if text := c.trimmed(p.term); text != "" && plainWord(text) != plainWord(p.is) {
			return p.term, p.is
		}
	}
	return "", ""
}

// qualified matches an epithet below the species that has a qualifier before
// it and no rank: "decurrens aff. physocarpa".
var qualified = regexp.MustCompile(`^\s+(?:(?i:cf|aff)\.?|\?)\s+(\p{Ll}[\p{Ll}-]+)`)

// plainWord takes the sign of a hybrid and a qualifier from before an epithet.
func plainWord(s string) string {
	for _, q := range []string{"cf.", "aff.", "?"} {
		s = strings.TrimPrefix(s, q)
	}
	return strings.Trim(s, "×+ \u00a0")
}

var (
	lsid = regexp.MustCompile(`(?i)^urn:lsid:[a-z0-9](?:[a-z0-9.-]*[a-z0-9])?:[^\s:]+:[^\s:]+(?::[^\s:]+)?$`)
	urn  = regexp.MustCompile(`(?i)^urn:[a-z0-9][a-z0-9-]{0,31}:[^\s]+$`)
	// scoped is a scope and a value: gbif:8102122, IPNI:457166-1.
	scoped = regexp.MustCompile(`^[A-Za-z][A-Za-z0-9._-]*:[^\s:][^\s]*$`)
	// broken is an address that lacks a slash.
	broken = regexp.MustCompile(`(?i)^(?:https?|ftp|file):`)
	uri    = regexp.MustCompile(`(?i)^[a-z][a-z0-9+.-]*://[^\s/?#]+/[^\s?#]*[^\s/?#]`)
	// A word of these is the name of a column or of another term, not the
	// identifier of anything.
	vocabulary = regexp.MustCompile(`^(?:dwc|dwciri|dcterms|dcterm|dct|dc|bdq|ac|rdf|rdfs|skos|owl|xsd|foaf):`)
)

func wholeIdentifier(s string) bool {
	lower := strings.ToLower(s)
	switch {
	case strings.HasPrefix(lower, "urn:lsid:"):
		return lsid.MatchString(s)
	case strings.HasPrefix(lower, "urn:"):
		return urn.MatchString(s)
	case strings.Contains(s, "://"):
		return uri.MatchString(s) && !strings.ContainsAny(s, " \t\r\n\u00a0")
	}
	return scoped.MatchString(s) && !vocabulary.MatchString(s) && !broken.MatchString(s)
}
