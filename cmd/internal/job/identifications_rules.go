package job

import (
	"slices"
	"strings"

	"cornerslip/label"
	"cornerslip/label/check"
)

// slipTerms are the columns that slips say or are joined by. What is wrong with
// others is no matter of slips.
var slipTerms = termSet(`scientificName scientificNameAuthorship genus infragenericEpithet specificEpithet infraspecificEpithet taxonRank
	cultivarEpithet identificationQualifier identifiedBy dateIdentified identificationRemarks typeStatus typifiedName namePublishedIn
	duplicatesTo catalogNumber institutionCode recordedBy recordNumber slip determinerInstitution coreid id`)

// tagTerms are the columns that tags say.
var tagTerms = termSet("recordedBy recordNumber")

func termSet(words string) map[string]bool {
	m := map[string]bool{}
	for w := range strings.FieldsSeq(words) {
		m[w] = true
	}
	return m
}

// A scope says which findings matter for what is to be printed; nil is all.
type scope struct {
	terms map[string]bool
	not   []string // rules that have no bearing
}

func (s *scope) concerns(f label.Finding) bool {
	switch {
	case s == nil:
		return true
	case slices.Contains(s.not, f.Rule):
		return false
	case strings.HasPrefix(f.Rule, "heading-"): // only what makes the columns doubtful
		return f.Severity == label.Error || s.terms[f.Term]
	}
	return f.Term == "" || s.terms[f.Term]
}

var (
	slipScope = &scope{slipTerms, []string{"collector-missing", "number-missing", "name-missing", "place-missing", "catalogue-number-twice", "duplicate-to-us"}}
	tagScope  = &scope{terms: tagTerms}
)

// What the check of slips looks for. The rules only name and rank what the job
// itself finds in two tables; they are listed with all others.
const (
	practice       = "common practice, no source"
	slipHandbook   = "herbarium handbooks on annotation slips"
	ruleSlipKind   = "slip-kind"
	ruleSlipEmpty  = "slip-empty"
	ruleSlipDet    = "slip-determiner-missing"
	ruleSlipDate   = "slip-date-missing"
	ruleSlipSheet  = "slip-sheet-missing"
	ruleUnjoined   = "slip-unjoined"
	ruleTwoRecords = "slip-two-records"
	ruleContradict = "slip-contradicts"
	ruleLoosely    = "slip-joined-loosely"
	ruleEarly      = "slip-before-collecting"
	ruleRepeated   = "slip-repeated"
	ruleOnLabel    = "slip-on-label"
	ruleNoSlip     = "slip-none"
)

var slipRules = []check.Rule{
	{Name: ruleSlipKind, Severity: label.Error, Source: slipHandbook, Terms: []string{"slip"},
		Doc: "the kind of a slip is determination, confirmation, revision, comment or type"},
	{Name: ruleSlipEmpty, Severity: label.Error, Source: slipHandbook, Terms: []string{"scientificName", "identificationRemarks", "typifiedName"},
		Doc: "a slip says a name; a comment says a remark"},
	{Name: ruleSlipDet, Severity: label.Error, Source: slipHandbook, Terms: []string{"identifiedBy"},
		Doc: "a slip is signed by its determiner"},
	{Name: ruleSlipDate, Severity: label.Warning, Source: slipHandbook, Terms: []string{"dateIdentified"},
		Doc: "slips on a sheet follow each other by their dates"},
	{Name: ruleSlipSheet, Severity: label.Warning, Source: slipHandbook, Terms: []string{"catalogNumber", "recordedBy", "recordNumber"},
		Doc: "a slip names its sheet, in case it comes loose"},
	{Name: ruleUnjoined, Severity: label.Error, Source: practice, Terms: []string{"catalogNumber", "recordedBy", "recordNumber"},
		Doc: "each row of identifications belongs to a record, by catalogue number or by collector and number"},
	{Name: ruleTwoRecords, Severity: label.Error, Source: practice, Terms: []string{"catalogNumber", "recordedBy", "recordNumber"},
		Doc: "a row of identifications belongs to one record alone"},
	{Name: ruleContradict, Severity: label.Error, Source: practice, Terms: []string{"catalogNumber", "recordedBy", "recordNumber"},
		Doc: "catalogue number, collector and number of an identification name the same record"},
	{Name: ruleLoosely, Severity: label.Warning, Source: practice, Terms: []string{"recordedBy"},
		Doc: "an identification that gives the collector's last name alone"},
	{Name: ruleEarly, Severity: label.Warning, Source: practice, Terms: []string{"dateIdentified"},
		Doc: "an identification from before the plant was collected"},
	{Name: ruleRepeated, Severity: label.Warning, Source: practice, Terms: []string{"scientificName"},
		Doc: "the same identification twice for one record"},
	{Name: ruleOnLabel, Severity: label.Note, Source: practice, Terms: []string{"scientificName"},
		Doc: "an identification that the record itself says, and so its label"},
	{Name: ruleNoSlip, Severity: label.Note, Source: practice,
		Doc: "a record that no identification speaks of"},
}
