package table

import (
	"regexp"
	"strings"
)

// rangeEnd is a heading with a word for the lower or the upper end of a range
// behind it, or before it.
var (
	rangeEnd   = regexp.MustCompile(`(?i)^(.*?[^\s,])[\s_.,(-]+(` + lowWords + `|` + highWords + `)[.)]*$`)
	rangeBegin = regexp.MustCompile(`(?i)^(` + lowWords + `|` + highWords + `)[\s_.-]+(\S.*)$`)
	lowEnd     = regexp.MustCompile(`(?i)^(` + lowWords + `)$`)
)

// The words by languages: English and its neighbours, Slavonic, Nordic, Romance,
// Hungarian and Turkish.
const (
	lowWords  = `min(?:im(?:um|al|ale|ální|alna|a|o)?|i?mi)?|m[íi]n(?:im[ao])?|from|von|van|od|от|від|мин(?:имальная)?|från|fra|da|de|desde|alsó|en az|en düşük`
	highWords = `max(?:im(?:um|al|ale|ální|alna|a|o)?)?|m[áa]x(?:im[ao])?|massim[ao]|to|bis|tot|do|до|макс(?:имальная)?|till|til|a|à|até|hasta|felső|en çok|en yüksek`
)

// readRange reads a heading of the lower or the upper end of heights or depths,
// such as "Wysokość od" and "Высота до".
func (v *words) readRange(heading string) reading {
	base, end := "", ""
	if m := rangeEnd.FindStringSubmatch(heading); m != nil {
		base, end = m[1], m[2]
	} else if m := rangeBegin.FindStringSubmatch(heading); m != nil {
		base, end = m[2], m[1]
	} else {
		return reading{}
	}
	r := v.lookup(strings.TrimSpace(base))
	if r.meaning == nil || !r.plain {
		return reading{}
	}
	side := "maximum"
	if lowEnd.MatchString(end) {
		side = "minimum"
	}
	switch r.terms[0] {
	case "minimumElevationInMeters":
		r.meaning = &meaning{terms: []string{side + "ElevationInMeters"}, plain: true, language: r.language, unit: r.unit}
	case "verbatimDepth", "minimumDepthInMeters":
		r.meaning = &meaning{terms: []string{side + "DepthInMeters"}, plain: true, language: r.language, unit: r.unit}
	default:
		return reading{}
	}
	return r
}
