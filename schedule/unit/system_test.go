package unit

import (
	"fmt"
	"testing"
	"time"
)

func ExampleSystem() {
	for _, s := range []System{US, Metric} {
		fmt.Println(s.Core(95), "|", s.Grate(121), "|", s.Mass(FromPounds(4.5)), "|", s.Mass(FromOunces(6)),
			"|", s.Length(FromInches(1.5)), "|", s.Difference(DifferenceFromFahrenheit(40)), "|", s.Speed(FromMPH(8)))
	}
	// Output:
	// 203 °F | 250 °F | 4.5 lb | 6 oz | 1.5 in | 40 °F | 8 mph
	// 95 °C | 120 °C | 2 kg | 170 g | 38 mm | 22 °C | 13 km/h
}

func ExampleParseMass() {
	m, _ := ParseMass("12 lb 6 oz")
	fmt.Printf("%.3f kg\n", float64(m))
	_, err := ParseMass("12")
	fmt.Println(err)
	// Output:
	// 5.613 kg
	// 12: a weight needs a unit: lb, oz, kg or g, such as 12 lb
}

func TestAbout(t *testing.T) {
	for minutes, want := range map[float64]string{
		0: "0 min", 20: "20 min", 19.6: "20 min", 30: "30 min", 31: "30 min", 33: "35 min", 58: "1 hr",
		93: "1 hr 35 min", 120: "2 hr", 121: "2 hr", 128: "2 hr 15 min", 581: "9 hr 45 min", 1439: "24 hr",
	} {
		if got := US.About(time.Duration(minutes * float64(time.Minute))); got != want {
			t.Errorf("%v min: got %q, want %q", minutes, got, want)
		}
	}
}

func TestSystemRounding(t *testing.T) {
	for _, c := range []struct{ got, want string }{
		{US.Core(FromFahrenheit(164.4)), "164 °F"},
		{Metric.Core(-0.2), "0 °C"},
		{US.Mass(FromOunces(15.9)), "1 lb"},
		{US.Mass(FromOunces(5.5)), "5.5 oz"},
		{Metric.Mass(0.9985), "1 kg"},
		{Metric.Mass(5.443), "5.4 kg"},
		{US.Length(FromInches(26.75)), "26.75 in"},
		{US.Length(FromFeet(600)), "600 ft"},
		{Metric.Length(0.56), "56 cm"},
		{Metric.Length(0.0996), "10 cm"},
		{Metric.Length(0.999), "1 m"},
		{Metric.Length(183.4), "183 m"},
	} {
		if c.got != c.want {
			t.Errorf("got %q, want %q", c.got, c.want)
		}
	}
}

func TestParseSystem(t *testing.T) {
	var s System
	if err := s.UnmarshalText([]byte("us")); err != nil || s != US {
		t.Errorf("us: %q, %v", s, err)
	}
	if _, err := ParseSystem("US customary"); err == nil || err.Error() != "US customary: a system of units is us or metric" {
		t.Errorf("got %v", err)
	}
}
