package reading

// neutral are words that change nothing of what is said beside them.
var neutral = wordsOf(`
	possible posible point should cambielo cambiela prefer prefiero swap likewise cambie cambien cambiele cambia
	ponga pongan pongale ponle pon haga hagan sea sean venga vengan ademas aparte ordered requested asked picked
	oh um uh us me him landlord landlady super gutter gutters decided finally choice pick mine preference nice
	great perfect soften bit family kids every each most once twice often sometimes usually always times spring
	springs summer summers june july august primavera verano mayo junio cada nobody noone sees notices lets ask
	before i im we my our want wants need needs would like could can be is are was has have got and with on of
	from in at for to up out worse today clima sol tiempo anos edad weather sun age elements corner corners
	sides edges too much more side edge spot spots little lot lots couple end ends part parts bunch whole
	replace replacing replaced roof please around over near back down away send holding held rock solid full
	stuff thing things kind sort looks seems look seem years year old new been only real really very pretty
	quite so also btw tho though lol now here there still yet well thanks deacon pastor janitor custodian
	carpenter plenty enough fyi cierto overall hi hello hey ok second thought time change guy said says bought
	built just all any some one ones it its this that these those them they theyre you u your the a an as by but
	or if when gray grey get winter winters cold heated match existing clean straight through rip put switch
	esquina sola solo cambiar cambio poner make makes go goes believe running runs growing grows spreading
	spreads going started starting belong belongs own owned owns rent rents rented renting live lives lived
	manage manages run husband wife mom moms mother mothers dad dads son sons daughter daughters grandma
	grandmas grandpa customer customers client clients tenant tenants renter way across bad badly middle center
	completely totally kinda heat heating unheated insulated european except excepting correction forgot mention
	mentioned note noted kindly aware advised say tell told already meant mean wrong forgotten add better
	instead rather otherwise hell heck crazy everywhere suppose guess mejor supongo upstairs downstairs bathroom
	kitchen hallway hall bedroom living dining laundry stairwell stairs room rooms shower tub entry closet porch
	lobby attic basement en al de del con para es que un una lo la el las los muy mas ya y o mi mis rento
	rentamos renta vivo vivimos vive familia todavia aun sigue esquinas lados lado orillas orilla partes bano
	cocina sala pasillo recamara cuarto tengo tiene quiero necesito esta estan ahi aqui tambien pero por falta
	falto faltaba viejo viejos vieja viejas entonces dije dijimos decia dicho decir decirle decirles le les
	olvido olvide olvidaba cosa acuerdo pedi pedimos mencione quise puse tome nota anote anotar anoten equivoque
	confundi perdon disculpe`)
