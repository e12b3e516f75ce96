package qty

import (
	"fmt"
	"math/big"
	"testing"
)

// TestUnitsAgainstPublished holds the units against the international yard and
// pound of 1959 as NIST Special Publication 811 (2008), appendix B.8, gives
// them, where bold factors are exact: inch 2.54 cm, foot 0.3048 m, yard 0.9144
// m, mile 1609.344 m, pound 0.45359237 kg, ounce 28.349523125 g, grain
// 64.79891 mg. From memory of that table; the pound and the yard also stand in
// Federal Register document 59-5442 (1959), from memory.
func TestUnitsAgainstPublished(t *testing.T) {
	for _, c := range []struct{ got, nano int64 }{
		{int64(Inch), 25_400_000},
		{int64(Foot), 304_800_000},
		{int64(Yard), 914_400_000},
		{int64(Mile), 1_609_344_000_000},
		{int64(Pound), 453_592_370_000},
		{int64(Ounce), 28_349_523_125},
		{int64(Grain), 64_798_910},
		{int64(Metre), 1_000_000_000},
		{int64(Kilometre), 1_000_000_000_000},
		{int64(Gram), 1_000_000_000},
		{int64(Kilogram), 1_000_000_000_000},
	} {
		if c.got != c.nano {
			t.Errorf("got %d, want %d", c.got, c.nano)
		}
	}
}

// TestUnitsFitTogether checks the definitions that count one unit in another:
// 16 ounces and 7,000 grains to the pound, 12 inches to the foot, 3 feet to
// the yard, 1,760 yards to the mile (NIST Handbook 44, appendix C, from
// memory).
func TestUnitsFitTogether(t *testing.T) {
	for _, c := range []struct {
		got  Rat
		want int64
	}{
		{Pound.In(Ounce), 16},
		{Pound.In(Grain), 7000},
		{Foot.In(Inch), 12},
		{Yard.In(Foot), 3},
		{Mile.In(Yard), 1760},
		{Centimetre.In(Millimetre), 10},
		{Decimetre.In(Centimetre), 10},
		{Metre.In(Decimetre), 10},
		{Kilometre.In(Metre), 1000},
		{Gram.In(Milligram), 1000},
		{Milligram.In(Nanogram), 1_000_000},
		{Kilogram.In(Gram), 1000},
	} {
		if !c.got.Equal(Int(c.want)) {
			t.Errorf("got %s, want %d", c.got, c.want)
		}
	}
}

// TestSixtyFourthsOfAnInch reads every 64th up to 100 in: each is exactly
// 396,875 nm, and each reads back from its own text.
func TestSixtyFourthsOfAnInch(t *testing.T) {
	for k := int64(1); k <= 6400; k++ {
		want := Length(k * 396_875)
		for _, text := range []string{fmt.Sprintf("%d/64 in", k), want.String()} {
			if got, err := ParseLength(text); err != nil || got != want {
				t.Fatalf("%s: got %d nm, %v; want %d", text, got, err, want)
			}
		}
	}
}

// TestEndsPerInch counts the ends of every whole density from 1 to 400 per
// inch in every whole width from 1 to 200 in: floats get 13 % of them wrong.
func TestEndsPerInch(t *testing.T) {
	for threads := int64(1); threads <= 400; threads++ {
		d := Density{Int(threads), Inch}
		for width := int64(1); width <= 200; width++ {
			for _, r := range []Rounding{Nearest, Up, Down} {
				if got := d.In(Length(width)*Inch, r); int64(got) != threads*width {
					t.Fatalf("%d/in in %d in, %s: got %d", threads, width, r, got)
				}
			}
		}
	}
}

// TestEndsPerTenCentimetres counts them per 10 cm in whole centimetres and
// per inch in whole centimetres, against exact slow arithmetic.
func TestEndsPerTenCentimetres(t *testing.T) {
	endsAgainstBig(t, 10*Centimetre, Centimetre)
	endsAgainstBig(t, Inch, Centimetre)
}

func endsAgainstBig(t *testing.T, over, step Length) {
	t.Helper()
	for threads := int64(1); threads <= 400; threads++ {
		d := Density{Int(threads), over}
		perStep := big.NewRat(threads*int64(step), int64(over))
		for width := int64(1); width <= 200; width++ {
			slow := new(big.Rat).Mul(perStep, big.NewRat(width, 1))
			for r, want := range roundingsOfBig(slow) {
				if got := d.In(Length(width)*step, Rounding(r)); int64(got) != want {
					t.Fatalf("%s in %d x %s, %s: got %d, want %d", d, width, step, Rounding(r), got, want)
				}
			}
		}
	}
}

// roundingsOfBig gives a, which is above 0, made whole in every way.
func roundingsOfBig(a *big.Rat) (whole [3]int64) {
	floor, over := new(big.Int).QuoRem(a.Num(), a.Denom(), new(big.Int))
	whole = [3]int64{Nearest: floor.Int64(), Up: floor.Int64(), Down: floor.Int64()}
	if over.Sign() > 0 {
		whole[Up]++
	}
	if over.Lsh(over, 1).Cmp(a.Denom()) >= 0 {
		whole[Nearest]++
	}
	return whole
}

// TestPoundsOfYarn weighs k x 3,360 yd of a yarn of 3,360 yd/lb, which is
// exactly k lb, and measures it back.
func TestPoundsOfYarn(t *testing.T) {
	g, err := ParseGrist("3360 yd/lb")
	if err != nil {
		t.Fatal(err)
	}
	for k := int64(1); k <= 1000; k++ {
		ng, nm := (Mass(k) * Pound).Rat(), (Length(k*3360) * Yard).Rat()
		if !g.Weigh(nm).Equal(ng) || !g.Measure(ng).Equal(nm) {
			t.Fatalf("%d lb: weighs %s ng, measures %s nm", k, g.Weigh(nm), g.Measure(ng))
		}
	}
	if per := g.Per(Yard, Pound); !per.Equal(Int(3360)) {
		t.Errorf("got %s yd/lb", per)
	}
}
