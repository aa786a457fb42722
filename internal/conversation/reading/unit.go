package reading

import "example.com/intake-bot/internal/fitcheck"

var (
	beforeUnitName = wordsOf(`not no isnt arent off to the a an my your per every within one few couple un una al el
		la`)
	noUnitName = wordsOf(`over from on measured i ok oh sorry yes sheet itself por es de both all two three four of
		them these those they theyre are were as like said told you before size sizes measurement measurements ambos
		ambas todos todas son medida medidas como dije dos tres cuatro whole entire full piece part thing with and
		including includes counting flat around way across lamina completo completa entero entera toda todo pieza con
		a`)
)

// unit is a unit of length as people write it.
type unit uint8

const (
	noUnit unit = iota
	inch
	foot
	millimetre
	centimetre
	metre
	mil // short for millimetres, where the number is large enough
)

var unitLengths = [...]fitcheck.Length{noUnit: fitcheck.Inch, inch: fitcheck.Inch, foot: fitcheck.Foot,
	millimetre: fitcheck.Millimetre, centimetre: fitcheck.Centimetre, metre: 100 * fitcheck.Centimetre, mil: fitcheck.Millimetre}

// unitWords are the names of units; "in" is looked at more closely, since it is also
// a small word.
var unitWords = map[string]unit{
	"in": inch, "inch": inch, "inches": inch, "ins": inch, "inchs": inch, "inche": inch, "inces": inch,
	"ich": inch, "iches": inch, "incehs": inch, "inchez": inch, "imches": inch, "incs": inch, "unches": inch,
	"inh": inch, "inchess": inch, "pulgada": inch, "pulgadas": inch, "pulg": inch, "plg": inch,
	"pulgda": inch, "pulgads": inch,
	"ft": foot, "foot": foot, "feet": foot, "fts": foot, "foots": foot, "feets": foot, "fet": foot,
	"pie": foot, "pies": foot,
	"mm": millimetre, "mms": millimetre, "millimeter": millimetre, "millimeters": millimetre, "millimetre": millimetre,
	"millimetres": millimetre, "milimeter": millimetre, "milimeters": millimetre, "mil": mil,
	"milimetro": millimetre, "milimetros": millimetre, "mils": mil, "milli": millimetre,
	"cm": centimetre, "cms": centimetre, "centimeter": centimetre, "centimeters": centimetre,
	"centimetre": centimetre, "centimetres": centimetre, "centimetro": centimetre, "centimetros": centimetre,
	"centi": centimetre, "cent": noUnit,
	"m": metre, "meter": metre, "meters": metre, "metre": metre, "metres": metre, "metro": metre, "metros": metre,
	"mts": metre, "mt": noUnit,
}

// UnitNamed is the one unit that a message names where it gives no length: the answer to
// "inches, feet, centimeters or millimeters?". It is "" where no unit or several are named,
// or a number stands beside it. It never fails.
func UnitNamed(text string) string {
	name := ""
	toks := lex(text)
	for i := range toks {
		t := &toks[i]
		if t.kind != wordToken || t.word == nil || t.word.unit == noUnit || t.is("in", "m", "mil") && len(toks) > 1 {
			continue
		}
		if i > 0 && toks[i-1].among(beforeUnitName) {
			return ""
		}
		if i > 0 && (toks[i-1].kind == numToken || toks[i-1].word != nil && toks[i-1].word.number.kind != notNumber) ||
			name != "" && unitWords[name] != t.word.unit {
			return ""
		}
		name = t.text
	}
	return name
}

// NamesPart says whether a text does nothing but name what a size is of: "that's the outside
// of the wood box". It never fails.
func NamesPart(text string) bool {
	r := &reader{Input: Input{Text: text}}
	r.toks = lex(text)
	r.bound()
	r.findPhrases()
	named := false
	for i := range r.toks {
		switch t := &r.toks[i]; {
		case t.kind == markToken:
		case r.labelAt[i] >= 0 && isName(&r.labels[r.labelAt[i]]):
			named = true
		case t.kind == wordToken && (t.word != nil && t.word.filler && !negWords.has(t.text) || r.among(i, noUnitName)):
		default:
			return false
		}
	}
	return named
}
