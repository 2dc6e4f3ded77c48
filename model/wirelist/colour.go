package wirelist

import "strings"

// colourWords are short forms of colours: the letter codes of IEC 60757 (from
// memory, unverified), and those that are common on wire lists (common practice,
// no source).
func colourWords() map[string]string {
	return map[string]string{
		"bk": "black", "blk": "black", "bla": "black", "noir": "black", "schwarz": "black", "sw": "black",
		"bn": "brown", "brn": "brown", "bro": "brown", "braun": "brown",
		"rd": "red", "rot": "red", "rt": "red", "rouge": "red", "rojo": "red",
		"og": "orange", "org": "orange", "orn": "orange", "ora": "orange",
		"ye": "yellow", "yel": "yellow", "ylw": "yellow", "gelb": "yellow", "ge": "yellow", "jaune": "yellow",
		"gn": "green", "grn": "green", "gre": "green", "grün": "green", "vert": "green",
		"bu": "blue", "blu": "blue", "blau": "blue", "bl": "blue", "bleu": "blue",
		"vt": "violet", "vio": "violet", "pur": "purple", "ppl": "purple",
		"gy": "grey", "gry": "grey", "gray": "grey", "grau": "grey", "gr": "grey",
		"wh": "white", "wht": "white", "whi": "white", "weiß": "white", "weiss": "white", "ws": "white",
		"pk": "pink", "pnk": "pink", "dk": "dark", "lt": "light", "lgt": "light", "drk": "dark",
		"gnye": "green/yellow",
	}
}

// colours are the ways in which a record might say the colour of a cell: one
// colour of several words, or a colour with a stripe.
func colours(text string) []string {
	short := colourWords()
	words := strings.FieldsFunc(strings.ToLower(text), func(r rune) bool { return strings.ContainsRune(" /-.,+", r) })
	for i, w := range words {
		if long := short[w]; long != "" {
			words[i] = long
		}
	}
	joined := strings.Join(words, "-")
	return []string{joined, strings.Join(words, "/"), shaded(words)}
}

// shaded joins a shade to its colour before the stripe: dark blue, yellow is
// dark-blue/yellow.
func shaded(words []string) string {
	var all []string
	for _, w := range words {
		if n := len(all); n > 0 && (all[n-1] == "dark" || all[n-1] == "light") {
			all[n-1] += "-" + w
			continue
		}
		all = append(all, w)
	}
	return strings.Join(all, "/")
}
