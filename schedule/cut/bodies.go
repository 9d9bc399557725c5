package cut

import (
	"bytes"
	"encoding/csv"
	"fmt"
	"strconv"
	"strings"

	"example.com/cookday/schedule/unit"
)

// readBodies reads the physical table: one cut a row, with what the kitchen adds missing.
func readBodies(table []byte) ([]Cut, error) {
	r := csv.NewReader(bytes.NewReader(table))
	r.Comment = '#'
	rows, err := r.ReadAll()
	if err != nil {
		return nil, err
	}
	var cuts []Cut
	for _, row := range rows[1:] {
		c, err := readBody(row)
		if err != nil {
			return nil, fmt.Errorf("%s: %w", row[0], err)
		}
		cuts = append(cuts, c)
	}
	return cuts, nil
}

func readBody(row []string) (Cut, error) {
	const first, last = 1, 18 // the columns that are numbers
	var v [last + 1]float64
	for i := first; i <= last; i++ {
		over, under, vulgar := strings.Cut(row[i], "/")
		x, err := strconv.ParseFloat(over, 64)
		if err != nil {
			return Cut{}, err
		}
		if v[i] = x; vulgar {
			y, err := strconv.ParseFloat(under, 64)
			if err != nil {
				return Cut{}, err
			}
			v[i] /= y
		}
	}
	kg := func(lb float64) float64 { return float64(unit.FromPounds(lb)) }
	return Cut{
		Name: row[0],
		Shape: Shape{
			ReferenceKg: kg(v[1]), ThicknessM: v[4] / 100, WidthM: v[5] / 100, LengthM: v[6] / 100,
			Growth: [3]float64{v[7], v[8], v[9]}, LogSize: v[16], RadiusScale: v[17],
			FootprintScale: v[18],
		},
		MinPieceKg: kg(v[2]), MaxPieceKg: kg(v[3]),
		Composition: Composition{Water: v[10], Protein: v[11], Fat: v[12], Ash: v[13]},
		WetFactor:   v[14], SupplyFactor: v[15],
		Estimate: row[19] == "yes",
		Sources:  strings.Fields(row[20]),
	}, nil
}
