package reading

// Of several towns, the one where the skylight goes.

// whereItGoes finds the one town of several that the skylight is to be sent to, or failing
// that the one where the building is: "ship to my shop in Medford OR, bill to Ashland OR".
func (r *reader) whereItGoes(all []found) (found, bool) {
	best, at, tie := 0, -1, false
	for k := range all {
		from := r.clauseStart(all[k].first)
		if k > 0 {
			from = max(from, all[k-1].last+1)
		}
		switch n := r.goesThere(from, all[k].first); {
		case n > best:
			best, at, tie = n, k, false
		case n == best && at >= 0 && all[at].Place != all[k].Place:
			tie = true
		}
	}
	if at < 0 || tie {
		return found{}, false
	}
	return all[at], true
}

// goesThere weighs the words that lead to a town: 2 where something is sent, 1 where the
// building is, less where bills go or somebody lives.
func (r *reader) goesThere(from, to int) int {
	if r.wordsIn(from, to, "bill", "billing", "billed", "invoice", "invoices", "payment", "statement", "not", "mailing", "factura", "cobro", "facturar", "office", "oficina", "hq", "headquarters", "moved", "used", "grew") {
		return -1
	}
	if r.wordsIn(from, to, "ship", "ships", "shipped", "shipping", "deliver", "delivered", "delivery", "send", "sent", "goes", "going", "envio", "enviar", "envien", "manden", "mandar", "mandenlo", "envienlo", "entregar", "entrega", "freight") {
		return 2
	}
	if r.wordsIn(from, to, "building", "job", "jobsite", "project", "site", "skylight", "skylights", "dome", "domes", "church", "warehouse", "cabin", "rental", "property", "install", "installed", "edificio", "obra", "trabajo", "tragaluz", "domo", "propiedad") {
		return 1
	}
	return 0
}
