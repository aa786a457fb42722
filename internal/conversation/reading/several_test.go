package reading

import (
	"encoding/json"
	"slices"
	"strings"
	"testing"

	"example.com/intake-bot/internal/fitcheck"
)

// answersToSeveral are messages that answer one or several questions: what was asked,
// the message, and what is read, "dk:" before what the person can't or won't say.
var answersToSeveral = []struct{ asked, text, want string }{
	{`name`, `i'm mark glass`, `name=Mark_Glass`},
	{`name`, `this is roland long`, `name=Roland_Long`},
	{`name`, `i'm walt day`, `name=Walt_Day`},
	{`name`, `name: faith park`, `name=Faith_Park`},
	{`name`, `i'm art`, `name=Art`},
	{`name`, `Pat St. Clair here`, `name=Pat_St._Clair`},
	{`name`, `Pat Delgado-Reyes here`, `name=Pat_Delgado-Reyes`},
	{`name`, `dawn st. clair here`, `name=Dawn_St._Clair`},
	{`name,place`, `Gus St. Clair. zip code 28801`, `name=Gus_St._Clair place={city:Asheville,state:NC,zip:28801}`},
	{`name`, `bear with me I'm not very handy lol. June Day here`, `name=June_Day`},
	{`name`, `you can put omar`, `name=Omar`},
	{`name`, `you can put gus short`, `name=Gus_Short`},
	{`name`, `you can put Curtis Glass`, `name=Curtis_Glass`},
	{`name`, `skip the name please`, `dk:name`},
	{`name`, `I'd rather not`, `dk:name`},
	{`name`, `no name`, `dk:name`},
	{`name,place`, `it ships to reno nv`, `place={city:Reno,state:NV}`},
	{`name,use,count`, `mark van houten here\nsingle family home\nonly the one`, `count=1 name=Mark_Van_Houten use=home`},
	{`name,place,use,count,style,frame_condition,want`, `i'm walt day\nchicago il\nit's a warehouse\nthere's 14\nidk\nframe ok\nonly the plastic please`, `count=14 frame_condition=good name=Walt_Day place={city:Chicago,state:IL} style=unsure use=commercial want=dome_only`},
	{`name,use,count,style,frame_condition,want`, `pat okafor\nan rv\n1\nplastic screwed straight down\nnot sure about the frame\njust the dome`, `count=1 frame_condition=unsure name=Pat_Okafor style=bare_dome use=rv want=dome_only`},
	{`name,place,use,count,style,problem,frame_condition,want`, `this is anh and june\nmy townhouse\n1\nan old style one the frame has tall straight up sides of its own\nwe get water on the carpet under it\nnot sure about the frame\nyou tell me`, `count=1 frame_condition=unsure name=Anh_and_June problem=[leaking] style=vertical_rise use=home want=unsure`},
	{`name,use,count,style,frame_condition,want`, `skip the name please\nour house\nthere's only one\nit's one of those light tubes with the shiny pipe\ncan't tell about the frame\nonly the plastic please`, `count=1 dk:name frame_condition=unsure style=tubular use=home want=dome_only`},
	{`layers,color,material`, `no idea`, `dk:color dk:layers dk:material`},
	{`layers,color,material`, `single, white, not sure`, `color={outer:white} dk:material layers=1`},
	{`layers,color,material`, `not sure, clear, acrylic`, `color={outer:clear} dk:layers material=acrylic`},
	{`problem,frame_condition`, `cracked\nnot sure`, `frame_condition=unsure problem=[cracked]`},
	{`problem,frame_condition`, `no damage, only updating, no idea what shape the frame is in`, `frame_condition=unsure problem=[]`},
	{`problem,frame_condition`, `it has gotten really foggy and dull. metal is still solid`, `frame_condition=good problem=[hazy]`},
	{`problem,frame_condition`, `the plastic has split. weathered, nothing serious`, `frame_condition=weathered problem=[cracked]`},
	{`style`, `es un marco viejo con lados altos y rectos propios`, `style=vertical_rise`},
	{`style`, `double pane style 2 layers`, `layers=2`},
	{`plastic_size`, `the acrylic itself measures 17x46 edge to edge`, `plastic_size={width_in:17,length_in:46}`},
	{`layers,color,material`, `2 layers white on the outside see-through clear on the inside acrylic is fine`, `color={outer:white,inner:clear} layers=2 material=acrylic`},
	{``, `can i buy the plastic dome by itself from you`, `want=dome_only`},
	{``, `busco solo la burbuja de plástico, sin marco`, `want=dome_only`},
	{`confirm`, `10-4`, `confirm=yes`},
	{`confirm`, `affirmative`, `confirm=yes`},
	{`confirm`, `you got it`, `confirm=yes`},
	{`name`, `art`, `name=Art`},
	{`name`, `anh day`, `name=Anh_Day`},
	{`name`, `Dale Rivers`, `name=Dale_Rivers`},
	{`name`, `my neighbor gave me your number`, ``},
	{`name`, `bear with me`, ``},
	{`name`, `call me Bear`, `name=Bear`},
	{`name`, `Lupita`, `name=Lupita`},
	{`name`, `soy Art Young`, `name=Art_Young`},
	{`name`, `it's June`, `name=June`},
	{`name`, `the last guy who came out never called me back`, ``},
	{`name,place`, `sandy, fayetteville ar`, `name=Sandy place={city:Fayetteville,state:AR}`},
	{`name,place`, `it's Rose, 44107`, `name=Rose place={city:Lakewood,state:OH,zip:44107}`},
	{`name,place`, `i'm curtis zip: 04401`, `name=Curtis place={city:Bangor,state:ME,zip:04401}`},
	{`name,place`, `this is dawn zip: 85004`, `name=Dawn place={city:Phoenix,state:AZ,zip:85004}`},
	{`name,place`, `joaquín código postal 98225`, `name=Joaquín place={city:Bellingham,state:WA,zip:98225}`},
	{`name,place`, `Faith Short from Bangor ME`, `name=Faith_Short place={city:Bangor,state:ME}`},
	{`name,place`, `Mark Glass\nBangor ME`, `name=Mark_Glass place={city:Bangor,state:ME}`},
	{`name`, `im clear on that`, ``},
	{`name`, `i'm here`, ``},
	{`name`, `this is fine`, ``},
	{`name`, `this is stupid`, ``},
	{`name`, `I'm not sure`, `dk:name`},
	{`name`, `im short on time`, ``},
	{`name`, `just a second`, ``},
	{`name`, `why do you need my name`, `!question dk:name`},
	{`name`, `glass`, `style=glass`},
	{`name`, `house`, `use=home`},
	{`style,frame_condition`, `screwed straight down`, `style=bare_dome`},
	{`curb_outside`, `I don't have a ladder that tall`, `dk:curb_outside`},
	{`curb_outside`, `no way to get up there`, `dk:curb_outside`},
	{`want`, `not just the dome, everything`, `want=complete_unit`},
	{`layers,color,material,finish`, `2 layers, no preference, polycarbonate please, bronze anodized`, `finish=bronze_anodized layers=2 material=polycarbonate`},
	{`layers,color,material,finish`, `one layer is fine. you pick. poly carbonate. bronze for the frame`, `?choice layers=1 material=polycarbonate`},
	{`layers,color,material,finish`, `double, bronze, acrylic, mill`, `color={outer:bronze} finish=mill layers=2 material=acrylic`},
}

func TestAnswersToSeveral(t *testing.T) {
	for _, c := range answersToSeveral {
		in := Input{Text: strings.ReplaceAll(c.text, `\n`, "\n")}
		for _, a := range strings.FieldsFunc(c.asked, func(r rune) bool { return r == ',' }) {
			in.Asked = append(in.Asked, fitcheck.Topic(a))
		}
		if got := shortForm(t, Read(in)); got != c.want {
			t.Errorf("%s [%s]\n got %s\nwant %s", c.text, c.asked, got, c.want)
		}
	}
}

// shortForm lists a reading in one line, in the order of the alphabet.
func shortForm(t *testing.T, r Reading) string {
	var all []string
	for _, f := range r.Facts {
		v, err := json.Marshal(f.Value)
		if err != nil {
			t.Fatal(err)
		}
		all = append(all, string(f.Topic)+"="+strings.ReplaceAll(strings.ReplaceAll(string(v), `"`, ""), " ", "_"))
	}
	for _, u := range r.Unclear {
		all = append(all, "?"+string(u.Why))
	}
	for _, q := range r.Requests {
		all = append(all, "!"+string(q))
	}
	for _, d := range r.DontKnow {
		all = append(all, "dk:"+string(d))
	}
	slices.Sort(all)
	return strings.Join(all, " ")
}
