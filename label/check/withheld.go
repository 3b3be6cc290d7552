package check

import (
	"regexp"
	"slices"
	"strings"
)

// withheld is what stands for a place that somebody keeps back.
var withheld = regexp.MustCompile(`(?i)^[\s\[({<*]*(?:(?:the )?(?:exact |precise )?(?:locality|location|place|coordinates?|information|data|details?) )*(?:is |was |are )?(?:suppressed|withheld|redacted|masked|obscured|not disclosed|confidential|removed for conservation)(?: for conservation(?: reasons)?| on request)?[\s\])}>*.]*$`)

var heldBack = map[string]bool{"locality": true, "verbatimLocality": true, "municipality": true, "county": true, "decimalLatitude": true, "decimalLongitude": true, "verbatimLatitude": true, "verbatimLongitude": true, "verbatimCoordinates": true}

// isWithheld reports whether a text in the column of a place says that somebody
// keeps the place back, and nothing else.
func isWithheld(term, text string) bool {
	if len(text) >= 12 && len(text) <= 400 && isWithheldProse(term, text) {
		return true
	}
	if len(text) < 6 || len(text) >= 80 {
		return false
	}
	end := text // without what closes it
	for end[len(end)-1] == ']' || end[len(end)-1] == ')' || end[len(end)-1] == '.' || end[len(end)-1] == '*' || end[len(end)-1] == '>' {
		if end = end[:len(end)-1]; len(end) < 6 {
			return false
		}
	}
	if !withheldTails[end[len(end)-2]&31][end[len(end)-1]&31] { // as most texts
		return false
	}
	return heldBack[term] && slices.ContainsFunc(withheldEnds, func(w string) bool { return len(end) >= len(w) && strings.EqualFold(end[len(end)-len(w):], w) }) && withheld.MatchString(text)
}

// withheldEnds are the last words of what withheld finds.
var withheldEnds = []string{"suppressed", "withheld", "redacted", "masked", "obscured", "disclosed", "confidential", "conservation", "reasons", "request"}

// withheldTails are the two letters that these end with, five bits of each.
var withheldTails = func() (tails [32][32]bool) {
	for _, w := range withheldEnds {
		tails[w[len(w)-2]&31][w[len(w)-1]&31] = true
	}
	return tails
}()

// withheldProse are sentences that begin with what is kept back, or with whose
// sake it is kept back for, and go on as they like: "Coordinates withheld to
// protect a rare species", "dados sensíveis". From memory.
var withheldProse = regexp.MustCompile(`(?i)^[\s\[({<*"]*(?:` +
	`(?:(?:sensitive|protected|threatened|rare|endangered) (?:species|taxon|plant)[,:;.– -]+)?(?:the )?(?:exact |precise |detailed |specific |full |original )*` +
	`(?:locality|location|locations|place|coordinates?|georeferences?|geographic(?:al)?|information|data|details?|record|occurrence)(?:[ /,&]+(?:and |or )?(?:data|information|info|details?|coordinates?|locality|location))*(?: for this (?:record|species))?` +
	`(?: (?:has|have|is|are|was|were|been|being|partly|partially|intentionally|deliberately))*[ :-]+(?:withheld|suppressed|redacted|masked|obscured|generali[sz]ed|blurred|fuzzed|not (?:disclosed|published|released|shown))|` +
	`sensitive (?:species|taxon|data|record|locality|location|information)[\s\])}>*.!]*$|` +
	`(?:os |as )?(?:dados|informação|informações|localidade|coordenadas|localização)(?: (?:do|da|de) (?:local|localização|ocorrência|coleta|colheita))?(?: exat[ao]s?| exact[ao]s?| precis[ao]s?)*(?: (?:são|é|foi|foram|está|estão))?(?: (?:sensíve(?:l|is)|omitid[ao]s?|ocultad[ao]s?|sigilos[ao]s?|confidencia(?:l|is)|suprimid[ao]s?|não (?:divulgad|revelad|publicad)[ao]s?))|` +
	`(?:los |las |la )?(?:datos|información|localidad|coordenadas|ubicación)(?: exact[ao]s?| precis[ao]s?)*(?: (?:son|es|fue|fueron|está|están))?(?: (?:sensibles?|omitid[ao]s?|ocult[ao]s?|ocultad[ao]s?|reservad[ao]s?|confidencial(?:es)?|suprimid[ao]s?|no (?:divulgad|revelad|publicad)[ao]s?))|` +
	`(?:les |la |le )?(?:données|localité|coordonnées|localisation)(?: exactes?| précises?)?(?: (?:est|sont|a été|ont été))?(?: (?:sensibles?|masquée?s?|floutée?s?|confidentiel(?:le)?s?|non (?:communiqu|divulgu|publi|diffus)ée?s?))|` +
	`(?:genauer |genaue )?(?:Fundort|Koordinaten|Daten|Ortsangaben?|Lokalität)(?: (?:ist|sind|wird|werden|wurde|wurden))?(?: (?:nicht (?:veröffentlicht|bekanntgegeben|angegeben aus Schutzgründen)|zurückgehalten|verschleiert|vertraulich|unkenntlich gemacht))` +
	`)(?:$|[^\pL])`)

// proseHeads are the two letters that these begin with, five bits of each.
var proseHeads = func() (heads [32][32]bool) {
	for w := range strings.FieldsSeq("sensitive protected threatened rare endangered the exact precise detailed specific full original locality place coordinates georeference geographic information data details record occurrence os as dados informação coordenadas los las la datos ubicación les la le données genau fundort koordinaten ortsangabe lokalität") {
		heads[w[0]&31][w[1]&31] = true
	}
	return heads
}()

func isWithheldProse(term, text string) bool {
	i := 0
	for text[i] == '[' || text[i] == '(' || text[i] == '*' || text[i] == '<' || text[i] == '"' || text[i] == '{' {
		if i++; i > 4 {
			return false
		}
	}
	return proseHeads[text[i]&31][text[i+1]&31] && heldBack[term] && withheldProse.MatchString(text)
}
