package main

import (
	"bufio"
	"fmt"
)

// A ruleObject is the JSON of a rule; its keys are kept stable.
type ruleObject struct {
	Name     string   `json:"name"`
	Severity string   `json:"severity"` // the one in force; "off" for a rule that says nothing
	Sentence string   `json:"sentence"`
	Source   string   `json:"source"`
	Terms    []string `json:"terms"`
	// The examples are files by name, to be checked as they are.
	Example        map[string]string `json:"example"`
	Counterexample map[string]string `json:"counterexample"`
}

// listRules shows every rule, those that the house has off included.
func (a *app) listRules(asJSON bool) error {
	j, err := a.job()
	if err != nil {
		return err
	}
	rules, err := j.RuleTexts()
	if err != nil {
		return err
	}
	out := bufio.NewWriter(a.stdout)
	for _, r := range rules {
		severity := "off"
		if r.Severity != 0 {
			severity = r.Severity.String()
		}
		if asJSON {
			terms := r.Terms
			if terms == nil {
				terms = []string{}
			}
			if err := encode(out, ruleObject{r.Name, severity, r.Doc, r.Source, terms, r.Example, r.Counterexample}); err != nil {
				return err
			}
			continue
		}
		fmt.Fprintf(out, "%s (%s)\n    %s\n    source: %s\n    raised by: %s\n    not by: %s\n", r.Name, severity, r.Doc, r.Source, r.Raised, r.Sound)
	}
	return out.Flush()
}
