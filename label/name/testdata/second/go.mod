// The second opinion on names is a module of its own, so that what it needs
// stays out of the product's.
module cornerslip/label/name/testdata/second

go 1.26.0

require (
	cornerslip v0.0.0
	github.com/gnames/gnparser v1.11.0
)

require (
	github.com/gnames/gnfmt v0.5.3 // indirect
	github.com/gnames/gnlib v0.44.0 // indirect
	github.com/gnames/gnuuid v0.1.2 // indirect
	github.com/gnames/organizer v0.1.1 // indirect
	github.com/gnames/tribool v0.1.1 // indirect
	github.com/google/uuid v1.6.0 // indirect
	github.com/json-iterator/go v1.1.12 // indirect
	github.com/modern-go/concurrent v0.0.0-20180306012644-bacd9c7ef1dd // indirect
	github.com/modern-go/reflect2 v1.0.2 // indirect
	golang.org/x/net v0.62.0 // indirect
	golang.org/x/text v0.44.0 // indirect
)

replace cornerslip => ../../../..
