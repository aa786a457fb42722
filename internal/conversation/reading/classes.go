package reading

// Word classes that rules of many files ask for. What only one file asks for stands in that file.
var (
	articles   = wordsOf(`the a an el la los las un una unos unas`)
	ownWords   = wordsOf(`my our mi mis nuestro nuestra nuestros nuestras`)
	andWords   = wordsOf(`and plus y e`)
	andOrWords = wordsOf(`and or plus y o e u`)
	butWords   = wordsOf(`but although though however pero aunque`)
	onlyWords  = wordsOf(`just only solo solamente nomas`)
	beWords    = wordsOf(`is are was were be been its thats theyre es son esta estan era eran fue`)
	correcting = wordsOf(`actually sorry wait oops meant mean instead correction scratch perdon digo espera
		espere mejor`)
	layerNouns = wordsOf(`layer layers ply pane panes capa capas`)

	negWords = wordsOf(`not no isnt arent wasnt werent dont doesnt didnt never without wont aint hasnt havent
		neither nor ni sin nunca tampoco ningun ninguna cannot cant wouldnt non nobody noone nadie zero couldnt
		nothing`)
	// kin are people whose age is told beside a measure.
	kin = wordsOf(`son sons daughter husband wife dad father mom mother grandson granddaughter grandpa grandma
		grandfather grandmother nephew niece uncle aunt brother sister neighbor neighbour kid boy girl cousin friend
		buddy partner esposo esposa marido mujer hijo hija papa mama nieto nieta sobrino sobrina suegro suegra cunado
		hermano hermana abuelo abuela vecino vecina primo amigo`)
	otherPersons = wordsOf(`wife wifes husband husbands spouse spouses partner partners girlfriend girlfriends
		boyfriend boyfriends daughter daughters son sons mother mothers mom moms father fathers dad dads sister
		sisters brother brothers neighbor neighbors friend friends roofer roofers contractor contractors kid kids boss
		bosses esposa esposo mujer marido hija hijo madre mama padre papa hermana hermano vecina vecino amiga amigo
		novia novio pareja techador contratista jefe jefa`)
	metalWords = wordsOf(`metal aluminum alum steel tin metallic metalico metalica aluminio`)
	boxWords   = wordsOf(`box boxes curb curbs riser cajon caja brocal bordillo curbing`)
	roofWords  = wordsOf(`roof roofs rooftop roofing techo techos tejado azotea`)
	frameNouns = wordsOf(`frame frames framing retainer retainers marco marcos armazon bastidor contramarco fraim
		frams`)
	frameParts = wordsOf(`frame frames framework rim rimmed ring metal aluminum alum steel band retainer flange
		channel angle marco aluminio aro`)
	sheetWords = wordsOf(`plastic plexi plexiglass plexiglas acrylic lexan bubble lens polycarbonate dome domes
		plastico acrilico burbuja cupula mica domo`)
	wholeWords = wordsOf(`skylight skylights unit skylite tragaluz tragaluces`)
	// colorNames are the words for a color by which a kind may be called.
	colorNames = wordsOf(`clear white bronze transparente transparentes blanco blanca blancos blancas bronce`)
	countNouns = wordsOf(`skylights skylight domes dome units unit bubbles lenses skylites mounts tragaluces
		tragaluz domos domo tops pcs pyramids piramides burbujas claraboyas claraboya cupulas`)
	monthWords = wordsOf(`january february march april may june july august september october november december jan
		feb mar apr jun jul aug sep sept oct nov dec enero febrero marzo abril mayo junio julio agosto septiembre
		octubre noviembre diciembre`)
	stateDenials = wordsOf(`no not isnt aint never without dont doesnt wasnt nothing zero sin ningun ninguna
		tampoco nada arent werent cant hardly barely free`)
	stateDoubts = wordsOf(`maybe think guess probably might may could should would if whether unless sure tell
		know suppose assume hope hopefully unclear wonder wondering dunno idk seem expect supposed or creo talvez
		quizas quiza parece supongo si sabe sabemos podria seria ojala espero o how what will`)
	domeWords = wordsOf(`dome domes plastic bubble bubbles lens lid cover insert glazing acrylic sheet domo domos
		tapa tapas plastico burbuja mica acrilico cubierta`)
)
