package peers

import (
	"fmt"
	"math"
	"strings"
)

const (
	panelWidth, panelHeight  = 300.0, 250.0
	plotLeft, plotTop        = 58.0, 34.0
	plotWidth, plotHeight    = 220.0, 160.0
	chartInk, chartGrid      = "#222", "#ddd"
	chartLine, chartLabelPix = "#8a3b12", 11
)

// draw puts charts with logarithmic axes side by side.
func draw(panels []panel) string {
	var b strings.Builder
	width := panelWidth * float64(len(panels))
	fmt.Fprintf(&b, `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 %.0f %.0f" font-family="sans-serif" font-size="%d" fill="%s">`+"\n",
		width, panelHeight, chartLabelPix, chartInk)
	fmt.Fprintf(&b, "<title>How cost grows</title>\n<rect width=\"%.0f\" height=\"%.0f\" fill=\"#fff\"/>\n", width, panelHeight)
	for i, p := range panels {
		fmt.Fprintf(&b, `<g transform="translate(%.0f 0)">`+"\n", panelWidth*float64(i))
		p.draw(&b)
		b.WriteString("</g>\n")
	}
	b.WriteString("</svg>\n")
	return b.String()
}

// scale maps a logarithmic axis from low to high onto a length.
type scale struct{ low, high, from, length float64 }

func (s scale) at(v float64) float64 {
	return s.from + s.length*math.Log(v/s.low)/math.Log(s.high/s.low)
}

// decades are the ends of an axis that holds all values: 1, 2 or 5 times a power of ten.
func decades(values []float64) (low, high float64, ticks []float64) {
	least, most := math.Inf(1), 0.0
	for _, v := range values {
		least, most = min(least, v), max(most, v)
	}
	for e := math.Floor(math.Log10(least)); len(ticks) == 0 || ticks[len(ticks)-1] < most; e++ {
		for _, m := range []float64{1, 2, 5} {
			tick := m * math.Pow(10, e)
			if tick*2.5 < least*1.0001 && m != 1 || len(ticks) > 0 && ticks[len(ticks)-1] >= most {
				continue
			}
			ticks = append(ticks, tick)
		}
	}
	for len(ticks) > 2 && ticks[1] <= least {
		ticks = ticks[1:]
	}
	return ticks[0], ticks[len(ticks)-1], ticks
}

func (p panel) draw(b *strings.Builder) {
	var xs, ys []float64
	for _, q := range p.points {
		xs, ys = append(xs, q.x), append(ys, q.y)
	}
	lowX, highX, ticksX := decades(xs)
	lowY, highY, ticksY := decades(ys)
	x := scale{lowX, highX, plotLeft, plotWidth}
	y := scale{lowY, highY, plotTop + plotHeight, -plotHeight}
	text := func(atX, atY float64, anchor, more, words string) {
		fmt.Fprintf(b, `<text x="%.1f" y="%.1f" text-anchor="%s"%s>%s</text>`+"\n", atX, atY, anchor, more, words)
	}
	line := func(x1, y1, x2, y2 float64) {
		fmt.Fprintf(b, `<line x1="%.1f" y1="%.1f" x2="%.1f" y2="%.1f" stroke="%s"/>`+"\n", x1, y1, x2, y2, chartGrid)
	}
	text(plotLeft, plotTop-16, "start", ` font-weight="bold"`, fmt.Sprintf("%s (power %.2f)", p.title, p.power(0)))
	for i, v := range ticksX {
		line(x.at(v), plotTop, x.at(v), plotTop+plotHeight)
		if len(ticksX) < 8 || i%3 == 0 {
			text(x.at(v), plotTop+plotHeight+14, "middle", "", fmt.Sprintf("%g", v))
		}
	}
	for i, v := range ticksY {
		line(plotLeft, y.at(v), plotLeft+plotWidth, y.at(v))
		if len(ticksY) < 10 || i%3 == 0 {
			text(plotLeft-5, y.at(v)+4, "end", "", fmt.Sprintf("%g", v))
		}
	}
	text(plotLeft+plotWidth/2, plotTop+plotHeight+32, "middle", "", p.x)
	text(0, 0, "middle", fmt.Sprintf(` transform="translate(14 %.0f) rotate(-90)"`, plotTop+plotHeight/2), p.y)
	var path []string
	for _, q := range p.points {
		path = append(path, fmt.Sprintf("%.1f,%.1f", x.at(q.x), y.at(q.y)))
		fmt.Fprintf(b, `<circle cx="%.1f" cy="%.1f" r="3" fill="%s"/>`+"\n", x.at(q.x), y.at(q.y), chartLine)
	}
	fmt.Fprintf(b, `<polyline points="%s" fill="none" stroke="%s" stroke-width="1.5"/>`+"\n", strings.Join(path, " "), chartLine)
}
