package main

import "fmt"

func (a *app) listRules(asJSON bool) error {
	j, err := a.job()
	if err != nil {
		return err
	}
	rules, err := j.Rules()
	if err != nil {
		return err
	}
	for _, r := range rules {
		severity := "off"
		if r.Severity != 0 {
			severity = r.Severity.String()
		}
		fmt.Fprintf(a.stdout, "%s (%s)\n    %s\n    source: %s\n", r.Name, severity, r.Doc, r.Source)
	}
	return nil
}
