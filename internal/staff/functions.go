package staff

import "html/template"

// functions are what templates may call beside the fields of their own data.
var functions = template.FuncMap{
	"asset": func(name string) string { return Base + "/assets/" + assetNames[name] },
	"phone": phoneWords,
	"plus":  func(a, b int) int { return a + b },
}
