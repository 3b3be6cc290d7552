// Command plain does the least that printing a label again cannot do without:
// it opens an SQLite file, reads from it, and writes a page without marks as PDF
// with the four faces of text embedded. The benchmark of reprint is held
// against it.
package main

import (
	"database/sql"
	"fmt"
	"os"

	"github.com/go-pdf/fpdf"
	_ "modernc.org/sqlite"

	"cornerslip/fonts"
)

func main() {
	if err := run(os.Args[1], os.Args[2]); err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
}

func run(database, out string) error {
	db, err := sql.Open("sqlite", database)
	if err != nil {
		return err
	}
	defer db.Close()
	var tables int
	if err := db.QueryRow("SELECT COUNT(*) FROM sqlite_schema").Scan(&tables); err != nil {
		return err
	}
	pdf := fpdf.New("P", "mm", "A4", "")
	styles := map[bool]map[bool]string{false: {false: "", true: "I"}, true: {false: "B", true: "BI"}}
	for _, bold := range []bool{false, true} {
		for _, italic := range []bool{false, true} {
			face := fonts.Default().Chain(italic, bold)[0]
			pdf.AddUTF8FontFromBytes("text", styles[bold][italic], face.TTF())
		}
	}
	pdf.AddPage()
	pdf.SetFont("text", "", 9)
	return pdf.OutputFileAndClose(out)
}
