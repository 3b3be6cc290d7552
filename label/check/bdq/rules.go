package bdq

import (
	"maps"
	"slices"

	"cornerslip/label"
	"cornerslip/label/check"
	"cornerslip/label/date"
)

// A speech is how a test speaks in the check.
type speech struct {
	// severity is what the check makes of it; Off unless the house asks for
	// it, where a label does not need the term or another rule says the same.
	severity label.Severity
	term     string // where it is said; the first term acted upon if ""
	message  string
	// suggest gives the likely right value.
	suggest func(*Cells) string
	// speak says it in place of term, message and suggest.
	speak func(c *Cells, say func(term, message, suggest string))
	// only tells in time that there is nothing to be said.
	only func(*Cells) bool
	// quiet reports that another rule speaks of it already.
	quiet func(*Cells, *check.Context) bool
	// twin is the rule that says the same, or more, in plainer words.
	twin  string
	never bool // it is answered in responses only
	// example raises it, counterexample does not.
	example, counterexample map[string]string
}

// Rules returns the tests as rules of the check, each under its standard
// label. Most are silent (check.Off) unless the house raises them: they ask
// for terms that no label needs, propose what the label prints rightly anyhow,
// or say what a basic rule says in plainer words. The assumed datum and the
// measure are no rules at all: they are answered in responses only.
func Rules() []check.Rule {
	var rules []check.Rule
	tests := Tests()
	for i := range tests {
		t := &tests[i]
		if t.rule.never {
			continue
		}
		rules = append(rules, check.Rule{
			Name: t.Label, Doc: t.Doc, Source: "TDWG Biodiversity Data Quality Core, " + t.GUID, Severity: t.rule.severity, Terms: t.Acts,
			Example: []map[string]string{maps.Clone(t.rule.example)}, Counterexample: []map[string]string{maps.Clone(t.rule.counterexample)},
			Row: t.say, Idle: t.idle,
		})
	}
	return rules
}

// say reports what the test finds wrong, or what it would change.
func (t *Test) say(ctx *check.Context) {
	c := shared(ctx)
	if t.rule.only != nil && !t.rule.only(c) {
		return
	}
	r := t.Answer(c)
	if !r.speaks() || t.rule.quiet != nil && t.rule.quiet(c, ctx) {
		return
	}
	switch {
	case t.rule.speak != nil:
		t.rule.speak(c, ctx.Suggest)
	case len(r.Amended) > 0:
		for _, one := range r.Amended {
			ctx.Suggest(bare(one.Term), t.rule.message, one.Value)
		}
	default:
		term, suggest := t.rule.term, ""
		if term == "" {
			term = t.Acts[0]
		}
		if t.rule.suggest != nil {
			suggest = t.rule.suggest(c)
		}
		ctx.Suggest(term, t.rule.message, suggest)
	}
}

// idle reports whether a table has none of the columns that the test looks at and the
// test has nothing to say of that: then it is so for every row.
func (t *Test) idle(has func(term string) bool) bool {
	return !slices.ContainsFunc(t.Acts, has) && !slices.ContainsFunc(t.Consults, has) &&
		!t.Answer(NewCells(func(string) string { return "" }, date.Date{})).speaks()
}

// speaks reports whether there is anything to be said of a response.
func (r Response) speaks() bool {
	return r.Result == NotCompliant || r.Result == PotentialIssue || len(r.Amended) > 0
}
