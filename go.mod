module cornerslip

go 1.26.0

require (
	github.com/boombuler/barcode v1.1.0 // Code 39 bars; only layout/symbol
	github.com/go-fonts/dejavu v0.3.2 // DejaVu Serif; only fonts
	github.com/go-fonts/liberation v0.3.3 // Liberation Serif; only fonts
	github.com/go-pdf/fpdf v0.9.0 // font subsets for PDF files; only layout/pdf
	github.com/go-text/typesetting v0.3.5 // shaping and UAX #14; layout/face, layout/para, layout/svg
	github.com/gocarina/gocsv v0.0.0-20240520201108-78e41c74b4b1 // side tables by name; only label/table
	github.com/google/uuid v1.6.0 // identifiers for specimens without a number; only cmd/internal/job
	github.com/jackc/pgx/v5 v5.12.0 // a register on PostgreSQL; only label/register
	github.com/pelletier/go-toml/v2 v2.4.3 // house files; only label/house
	github.com/schollz/progressbar/v3 v3.19.1 // long runs on a terminal; only cmd/cornerslip
	github.com/spf13/cobra v1.10.2 // the command line; only cmd/cornerslip
	github.com/spf13/pflag v1.0.9 // its flags; only cmd/cornerslip
	github.com/xuri/excelize/v2 v2.11.1 // workbooks; only label/table
	golang.org/x/term v0.47.0 // is it a terminal; only cmd/cornerslip
	golang.org/x/text v0.44.0 // encodings, normal forms, collation
	modernc.org/sqlite v1.62.0 // a register in one file, without cgo; only label/register
	rsc.io/qr v0.2.0 // QR Codes of several modes; only layout/symbol
)

// Tests only.
require (
	github.com/google/go-cmp v0.7.0 // differences
	github.com/makiuchi-d/gozxing v0.1.1 // a decoder of bars
	github.com/rogpeppe/go-internal v1.16.0 // scripts of the command
	golang.org/x/image v0.44.0 // a second reader of fonts
	pgregory.net/rapid v1.3.0 // properties
)

require (
	github.com/dustin/go-humanize v1.1.0 // indirect
	github.com/inconshreveable/mousetrap v1.1.0 // indirect
	github.com/jackc/pgpassfile v1.0.0 // indirect
	github.com/jackc/pgservicefile v0.0.0-20240606120523-5a60cdf6a761 // indirect
	github.com/jackc/puddle/v2 v2.2.3 // indirect
	github.com/mattn/go-isatty v0.0.24 // indirect
	github.com/mitchellh/colorstring v0.0.0-20190213212951-d06e56a500db // indirect
	github.com/ncruces/go-strftime v1.1.0 // indirect
	github.com/remyoudompheng/bigfft v0.0.0-20230129092748-24d4a6f8daec // indirect
	github.com/richardlehane/mscfb v1.0.9 // indirect
	github.com/richardlehane/msoleps v1.0.6 // indirect
	github.com/rivo/uniseg v0.4.7 // indirect
	github.com/tiendc/go-deepcopy v1.7.2 // indirect
	github.com/xuri/efp v0.0.3-0.20260924042702-217b81952dec // indirect
	github.com/xuri/nfp v0.0.2-0.20250530014748-2ddeb826f9a9 // indirect
	golang.org/x/crypto v0.58.0 // indirect
	golang.org/x/net v0.62.0 // indirect
	golang.org/x/sync v0.25.0 // indirect
	golang.org/x/sys v0.49.0 // indirect
	golang.org/x/tools v0.52.0 // indirect
	golang.org/x/xerrors v0.0.0-20200804184101-5ec99f83aff1 // indirect
	modernc.org/libc v1.80.1 // indirect
	modernc.org/mathutil v1.7.1 // indirect
	modernc.org/memory v1.12.1 // indirect
)
