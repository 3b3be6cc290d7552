package check

import (
	"cornerslip/label"
	"cornerslip/label/name"
)

// A NameProblem is what composing the name met.
type NameProblem = name.Problem

// readName composes the name as it is to be printed.
func (c *Context) readName() {
	c.Parts = name.Parts{
		Genus: c.Text("genus"), InfragenericEpithet: c.Text("infragenericEpithet"),
		SpecificEpithet: c.Text("specificEpithet"), InfraspecificEpithet: c.Text("infraspecificEpithet"),
		Authorship: c.Text("scientificNameAuthorship"), Family: c.Text("family"),
		Qualifier: c.Text("identificationQualifier"), Rank: c.Text("taxonRank"), CultivarEpithet: c.Text("cultivarEpithet"),
	}
	r := c.past.names.of(nameKey{c.Text("scientificName"), c.Parts}, composed)
	c.Name, c.NameProblems = r.name, r.problems
}

// nameKey is all that a name is composed of.
type nameKey struct {
	text  string
	parts name.Parts
}

type nameReading struct {
	name     string
	problems []NameProblem
}

func composed(k nameKey) nameReading {
	n, problems := name.Compose(k.text, k.parts)
	return nameReading{n, problems}
}

// nameRules are about the scientific name and the columns beside it.
func nameRules() []Rule {
	return []Rule{
		{
			Name: "name-columns", Severity: label.Warning, Source: darwin + " (scientificName, genus, specificEpithet, infraspecificEpithet)",
			Doc:     "a column of the name says something else than scientificName",
			Terms:   []string{"genus", "specificEpithet", "infraspecificEpithet", "scientificNameAuthorship", "scientificName"},
			Example: one("specificEpithet", "camphoratus"), Counterexample: one("genus", "Thymus", "specificEpithet", "capitellatus"),
			Row: func(c *Context) {
				if len(c.NameProblems) == 0 || c.Doubted("scientificName") {
					return // a damaged name fits no column
				}
				for _, p := range c.NameProblems {
					if p.Term != "identificationQualifier" && !c.Doubted(p.Term) {
						c.Suggest(p.Term, p.Message, p.Suggest)
					}
				}
			},
		},
		{
			Name: "qualifier-unplaced", Severity: label.Warning, Source: darwin + " (identificationQualifier)",
			Doc:     "an identificationQualifier that names no epithet of the name; it is printed in brackets after it",
			Terms:   []string{"identificationQualifier"},
			Example: one("identificationQualifier", "cf. villosus"), Counterexample: one("identificationQualifier", "cf. capitellatus"),
			Row: func(c *Context) {
				for _, p := range c.NameProblems {
					if p.Term == "identificationQualifier" {
						c.Suggest(p.Term, p.Message, p.Suggest)
					}
				}
			},
		},
	}
}
