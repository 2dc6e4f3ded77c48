package main

import (
	"bytes"
	"encoding/csv"
	"fmt"
	"os"
	"path/filepath"
	"strings"

	"github.com/spf13/cobra"
	"github.com/xuri/excelize/v2"

	"driploop/model/quantity"
	"driploop/model/wirelist"
	"driploop/model/yard"
	"driploop/reports"
)

const importLong = `Make a record of a wire list that a spreadsheet holds. Columns are matched by the
words of their header, in any order; units are read from the header or the cell.
Nothing is dropped: what was taken for what, and what was not understood, is
told by cell, and cells that have no place in a record stay as comments.

Columns that no header names are said by hand: --columns A=id,C=from,D=to. The
names are `

func newImport(s *session) *cobra.Command {
	o, columns, to := wirelist.Options{}, "", ""
	cmd := &cobra.Command{
		Use:   "import FILE.csv|FILE.xlsx",
		Short: "Make a record of a wire list",
		Long:  importLong + strings.Join(wirelist.Names(), ", ") + ".\n\n" + exitHelp,
		Example: `  driploop import --system "12 V" wires.xlsx -o job.yaml
  driploop import --system "24 V" --columns B=id,C=from,D=to,F=size wires.csv`,
		Args: exactlyOne("name one wire list"),
		RunE: func(_ *cobra.Command, args []string) error {
			if _, err := quantity.Parse(o.System, quantity.Voltage); err != nil {
				return fmt.Errorf("--system: %w; say the nominal voltage, such as --system \"12 V\"", err)
			}
			if columns != "" {
				said, err := wirelist.ParseColumns(columns)
				if err != nil {
					return fmt.Errorf("--columns: %w", err)
				}
				o.Columns = said
			}
			return s.importList(args[0], o, to)
		},
	}
	cmd.Flags().StringVar(&o.System, "system", "", "nominal voltage of the installation, which no wire list says")
	cmd.Flags().StringVar(&o.Number, "number", "", "number of the job")
	cmd.Flags().StringVar(&columns, "columns", "", "columns said by hand, such as A=id,C=from,D=to")
	cmd.Flags().StringVarP(&to, "output", "o", "", "file to write, which must not be there yet (default: standard output)")
	return cmd
}

func (s *session) importList(path string, o wirelist.Options, to string) error {
	info, err := os.Stat(path)
	switch {
	case err != nil:
		return fmt.Errorf("%s: %s", path, yard.Reason(err))
	case !info.Mode().IsRegular():
		return fmt.Errorf("%s is no file", path)
	case info.Size() > wirelist.MaxBytes:
		return fmt.Errorf("%s has %d bytes; a wire list has at most %d", path, info.Size(), wirelist.MaxBytes)
	}
	text, err := os.ReadFile(path)
	if err != nil {
		return fmt.Errorf("%s: %s", path, yard.Reason(err))
	}
	grid, err := wirelist.ReadGrid(path, text)
	if err != nil {
		return err
	}
	got, err := wirelist.Import(path, grid, o)
	if err != nil {
		return err
	}
	for _, note := range got.Notes {
		fmt.Fprintln(s.errs, reports.Plain(note))
	}
	if err := s.keep(destination(to), got.Text); err != nil || to == "" {
		return err
	}
	fmt.Fprintf(s.errs, "wrote %s; judge it with: driploop check %s\n", to, to)
	return nil
}

const exportLong = `Write the wire list of a record: a row for each conductor, with what a wire list
can hold. driploop import makes the same conductors of it again.

`

func newExport(s *session) *cobra.Command {
	to := ""
	cmd := &cobra.Command{
		Use:   "export RECORD",
		Short: "Write the wire list of a record",
		Long:  exportLong + exitHelp,
		Example: `  driploop export job.yaml > wires.csv
  driploop export job.yaml -o wires.xlsx`,
		Args: exactlyOne("name one record, or - for standard input"),
		RunE: func(_ *cobra.Command, args []string) error {
			one, _, err := s.one(args[0])
			if err != nil {
				return err
			}
			rows := wirelist.Export(one.record)
			var text []byte
			if strings.EqualFold(filepath.Ext(to), ".xlsx") {
				text, err = workbook(rows)
			} else {
				text, err = separated(rows)
			}
			if err != nil {
				return err
			}
			return s.keep(destination(to), text)
		},
	}
	cmd.Flags().StringVarP(&to, "output", "o", "", "file to write, .csv or .xlsx, which must not be there yet (default: CSV to standard output)")
	return cmd
}

func separated(rows [][]string) ([]byte, error) {
	var b bytes.Buffer
	w := csv.NewWriter(&b)
	err := w.WriteAll(rows)
	return b.Bytes(), err
}

// workbook writes rows as text cells, so that nothing in a record is taken for
// a formula.
func workbook(rows [][]string) ([]byte, error) {
	book := excelize.NewFile()
	defer book.Close()
	for i, row := range rows {
		for j, text := range row {
			at, err := excelize.CoordinatesToCellName(j+1, i+1)
			if err != nil {
				return nil, err
			}
			if err := book.SetCellStr("Sheet1", at, text); err != nil {
				return nil, err
			}
		}
	}
	var b bytes.Buffer
	err := book.Write(&b)
	return b.Bytes(), err
}
