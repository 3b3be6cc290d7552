package fonts

import (
	_ "embed"
	"sync"

	"github.com/go-fonts/dejavu/dejavuserif"
	"github.com/go-fonts/dejavu/dejavuserifbold"
	"github.com/go-fonts/dejavu/dejavuserifbolditalic"
	"github.com/go-fonts/dejavu/dejavuserifitalic"
	"github.com/go-fonts/liberation/liberationserifbold"
	"github.com/go-fonts/liberation/liberationserifbolditalic"
	"github.com/go-fonts/liberation/liberationserifitalic"
	"github.com/go-fonts/liberation/liberationserifregular"
)

// The licences travel with the program, as they ask to. The texts are the
// modules' own.
var (
	//go:embed licences/liberation.txt
	liberationLicence string
	//go:embed licences/dejavu.txt
	dejavuLicence string
)

// Default returns the faces that come with the program: Liberation Serif, and
// DejaVu Serif for what it lacks, in four styles each.
func Default() *Set { return defaultSet() }

var defaultSet = sync.OnceValue(func() *Set {
	const liberation, dejavu = "Liberation Serif", "DejaVu Serif"
	return newSet([]*Face{
		{Name: "LiberationSerif", Family: liberation, data: liberationserifregular.TTF, licence: liberationLicence},
		{Name: "LiberationSerif-Italic", Family: liberation, Italic: true, data: liberationserifitalic.TTF, licence: liberationLicence},
		{Name: "LiberationSerif-Bold", Family: liberation, Bold: true, data: liberationserifbold.TTF, licence: liberationLicence},
		{Name: "LiberationSerif-BoldItalic", Family: liberation, Italic: true, Bold: true, data: liberationserifbolditalic.TTF, licence: liberationLicence},
		{Name: "DejaVuSerif", Family: dejavu, data: dejavuserif.TTF, licence: dejavuLicence},
		{Name: "DejaVuSerif-Italic", Family: dejavu, Italic: true, data: dejavuserifitalic.TTF, licence: dejavuLicence},
		{Name: "DejaVuSerif-Bold", Family: dejavu, Bold: true, data: dejavuserifbold.TTF, licence: dejavuLicence},
		{Name: "DejaVuSerif-BoldItalic", Family: dejavu, Italic: true, Bold: true, data: dejavuserifbolditalic.TTF, licence: dejavuLicence},
	})
})
