package drawing

import (
	"strings"

	"example.com/intake-bot/internal/fitcheck"
)

// word is a word on a picture, in English and Spanish.
type word [2]string

var (
	wordRetainer = word{"top frame", "marco de arriba"}
	wordPlastic  = word{"plastic", "plástico"}
	wordFrame    = word{"old frame", "marco viejo"}
	wordCurb     = word{"box", "caja"}
	wordCut      = word{"From the side, cut open", "De lado, en corte"}
	wordAbove    = word{"From above", "Desde arriba"}
	wordBelow    = word{"Frame from below", "El marco desde abajo"}
	wordClose    = word{"The corner, close up", "La esquina, de cerca"}
	wordSlope    = word{"On a slope: square to the roof", "Techo inclinado: a escuadra con el techo"}
	wordStick    = word{"straight stick", "regla recta"}
	wordYours    = word{"Your numbers, to scale", "Sus medidas, a escala"}
	wordBoxPlan  = word{"The box, from above", "La caja, desde arriba"}
	wordDomePlan = word{"Plastic and frame, from above", "Plástico y marco, desde arriba"}
	wordSide     = word{"From the side", "De lado"}
	wordCheck    = word{"check", "revisar"}
	wordOneSide  = word{"(one side)", "(un lado)"}
	wordAnd      = word{"and", "y"}
	// wordCheckAgain stands under a doubtful number.
	wordCheckAgain = word{"please check this one", "revise esta medida, por favor"}
	wordSafe       = word{"Only where you can reach safely.", "Solo donde alcance con seguridad."}
)

// in is the word in a language: Spanish for any of its kinds, else English.
func (w word) in(language string) string {
	if lang, _, _ := strings.Cut(strings.ToLower(language), "-"); lang == "es" {
		return w[1]
	}
	return w[0]
}

// caption is what stands over and under a lesson's picture.
type caption struct {
	title word
	lines []word
}

var captions = map[fitcheck.Topic]caption{
	fitcheck.TopicCurbOutside: {word{"Box, outside to outside", "Caja, por fuera"}, []word{
		{"From face 1 to face 2, just under the old frame.", "De la cara 1 a la 2, justo bajo el marco viejo."},
		{"Flashing counts. The old frame does not.", "El tapajuntas cuenta. El marco viejo no."},
		{"Both ways, to the nearest 1/16.", "En los dos sentidos, al 1/16."}}},
	fitcheck.TopicCurbInside: {word{"Box, inside to inside", "Caja, por dentro"}, []word{
		{"From wood 1 to wood 2. Indoors is fine.", "De madera 1 a madera 2. Desde adentro está bien."},
		{"Drywall over the wood? Say so.", "¿Tablaroca sobre la madera? Dígalo."},
		{"Both ways, to the nearest 1/16.", "En los dos sentidos, al 1/16."}}},
	fitcheck.TopicCurbDiagonals: {word{"Box, corner to corner", "Caja, de esquina a esquina"}, []word{
		{"Outside corner 1 to outside corner 2,", "De la esquina exterior 1 a la 2,"},
		{"then the other pair, 3 to 4.", "y luego el otro par, de la 3 a la 4."}}},
	fitcheck.TopicPlasticSize: {word{"Plastic, edge to edge", "Plástico, de borde a borde"}, []word{
		{"From edge 1 to edge 2, along the flat lip.", "Del borde 1 al 2, por la pestaña plana."},
		{"Not the metal. Not over the bulge.", "No el metal. No por encima de la curva."},
		{"Metal hides the edge? Say so. Both ways.", "¿El metal tapa el borde? Dígalo. Dos sentidos."}}},
	fitcheck.TopicRetainerOpening: {word{"Top frame, opening", "Marco de arriba, abertura"}, []word{
		{"Lay the tape on the metal, inner edge 1 to", "Cinta sobre el metal, del borde interior 1"},
		{"inner edge 2, where the dome comes through.", "al 2, por donde sale el domo."},
		{"Both ways, to the nearest 1/16.", "En los dos sentidos, al 1/16."}}},
	fitcheck.TopicRetainerOutside: {word{"Top frame, outside", "Marco de arriba, por fuera"}, []word{
		{"From outer edge 1 to outer edge 2.", "Del borde exterior 1 al borde exterior 2."},
		{"Both ways, to the nearest 1/16.", "En los dos sentidos, al 1/16."}}},
	fitcheck.TopicFrameInside: {word{"Old frame, inside", "Marco viejo, por dentro"}, []word{
		{"Between the down-turned sides, 1 to 2,", "Entre los lados doblados, del 1 al 2,"},
		{"where the frame slips over the box. Both ways.", "donde entra la caja. En los dos sentidos."},
		{"Still on the box? Say so, leave it there.", "¿Sigue en la caja? Dígalo y déjelo ahí."}}},
	fitcheck.TopicCurbHeight: {word{"Height of the box", "Altura de la caja"}, []word{
		{"From the roof, 1, up to the top of the wood, 2.", "Del techo, 1, al borde de arriba de la madera, 2."},
		{"Not the frame. Where the box is lowest.", "No el marco. Donde la caja es más baja."}}},
	fitcheck.TopicDomeRise: {word{"Rise of the dome", "Altura del domo"}, []word{
		{"From the flat lip, 1, up to the level of the top, 2.", "De la pestaña plana, 1, al nivel de arriba, 2."},
		{"A straight stick across the top helps.", "Ayuda una regla recta sobre el domo."}}},
	fitcheck.TopicBulgeBase: {word{"Foot of the bulge", "Base del domo"}, []word{
		{"From foot 1 to foot 2, where the plastic", "Del pie 1 al pie 2, donde el plástico"},
		{"rises out of its flat lip. Not over the top.", "sale de la pestaña. No por encima."},
		{"Both ways, to the nearest 1/16.", "En los dos sentidos, al 1/16."}}},
}

// partName is what a measure is of, in a customer's words.
func partName(t fitcheck.Topic) word {
	switch t {
	case fitcheck.TopicCurbOutside:
		return word{"outside of the box", "caja por fuera"}
	case fitcheck.TopicCurbInside:
		return word{"inside of the box", "caja por dentro"}
	case fitcheck.TopicFrameInside:
		return word{"inside of the old frame", "marco viejo por dentro"}
	case fitcheck.TopicCurbDiagonals:
		return word{"corner to corner", "de esquina a esquina"}
	case fitcheck.TopicPlasticSize:
		return word{"plastic, edge to edge", "plástico de borde a borde"}
	case fitcheck.TopicRetainerOpening:
		return word{"opening of the top frame", "abertura del marco de arriba"}
	case fitcheck.TopicRetainerOutside:
		return word{"outside of the top frame", "marco de arriba por fuera"}
	case fitcheck.TopicBulgeBase:
		return word{"foot of the bulge", "base del domo"}
	case fitcheck.TopicCurbHeight:
		return word{"height of the box", "altura de la caja"}
	case fitcheck.TopicDomeRise:
		return word{"rise of the dome", "altura del domo"}
	}
	return word{string(t), string(t)}
}
