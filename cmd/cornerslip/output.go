package main

import (
	"fmt"
	"io"
	"path/filepath"
	"slices"
	"strings"

	"cornerslip/cmd/internal/job"
)

// reads notes a file that the command reads, and what it is: no output may
// replace it, whatever --force says.
func (a *app) reads(path, what string) {
	if path == "" || path == "-" {
		return
	}
	if a.inputs == nil {
		a.inputs = map[string]string{}
	}
	a.inputs[path] = what
}

// write makes an output file, whole or not at all.
func (a *app) write(path string, write func(io.Writer) error) error {
	if err := a.spared(path); err != nil {
		return err
	}
	return job.WriteFile(path, a.force, write)
}

// writePages is write for a PDF.
func (a *app) writePages(path string, write func(io.Writer) error) error {
	if err := pagesName(path); err != nil {
		return err
	}
	return a.write(path, write)
}

// spared refuses a name that belongs to what is read.
func (a *app) spared(path string) error {
	if path == "-" {
		return fmt.Errorf("\"-\" is not the name of a file; name the file to write")
	}
	switch strings.ToLower(filepath.Ext(path)) {
	case ".xlsx", ".xlsm", ".xls", ".ods":
		return fmt.Errorf("%s: workbooks are read, not written; name a file that ends in .csv", path)
	}
	for in, what := range a.inputs {
		if sameFile(path, in) {
			return fmt.Errorf("%s is %s itself; name another file", path, what)
		}
	}
	return nil
}

// ready reports whether pages, and the cutting list if there is one, will find
// their place: before anything is done that is not undone.
func (a *app) ready(out, cuts string) error {
	if err := pagesName(out); err != nil {
		return err
	}
	if err := a.spared(out); err != nil {
		return err
	}
	if cuts == "" || cuts == "-" {
		return nil
	}
	if err := apart("", out, cuts); err != nil {
		return err
	}
	if err := a.spared(cuts); err != nil {
		return err
	}
	return job.CanWrite(cuts, a.force)
}

// pagesName refuses to call a PDF what other programs take for something else.
func pagesName(path string) error {
	end := strings.ToLower(filepath.Ext(path))
	if slices.Contains([]string{".csv", ".tsv", ".txt", ".xlsx", ".toml", ".db", ".zip", ".json", ".jsonl", ".html", ".svg"}, end) {
		return fmt.Errorf("%s: the pages are a PDF; name a file that ends in .pdf", path)
	}
	return nil
}
