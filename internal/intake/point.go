package intake

// Point is a place in the way of a message at which a process may die with most effect.
type Point string

// The points, in the order in which a message passes them.
const (
	BeforeReceiveCommit Point = "before_receive_commit"
	AfterReceiveCommit  Point = "after_receive_commit"
	BeforeTurnCommit    Point = "before_turn_commit"
	AfterTurnCommit     Point = "after_turn_commit"
	BeforeSendCall      Point = "before_send_call" // claimed, the provider not yet called
	AfterSendCall       Point = "after_send_call"  // the provider has it, which is not yet recorded
	AfterSendRecord     Point = "after_send_record"
)

// Points that only some messages pass.
const (
	BeforeStatusCommit Point = "before_status_commit" // the provider's word on a message that was sent
	AfterStatusCommit  Point = "after_status_commit"
	BeforeMailCommit   Point = "before_mail_commit" // of a mail that is no message
	AfterMailCommit    Point = "after_mail_commit"
	BeforePhotoFetch   Point = "before_photo_fetch"
	AfterPhotoFetch    Point = "after_photo_fetch"
	BeforePhotoCommit  Point = "before_photo_commit"
	AfterPhotoCommit   Point = "after_photo_commit"
	BeforeAskCall      Point = "before_ask_call" // the provider is asked for a send in doubt
	AfterAskCall       Point = "after_ask_call"
	BeforeMailCall     Point = "before_mail_call" // a mail is noted as begun, the server not yet called
	AfterMailCall      Point = "after_mail_call"
)

// SomePoints lists those.
var SomePoints = []Point{BeforeStatusCommit, AfterStatusCommit, BeforeMailCommit, AfterMailCommit, BeforePhotoFetch, AfterPhotoFetch,
	BeforePhotoCommit, AfterPhotoCommit, BeforeAskCall, AfterAskCall, BeforeMailCall, AfterMailCall}

// Points lists those that every message passes.
var Points = []Point{BeforeReceiveCommit, AfterReceiveCommit, BeforeTurnCommit, AfterTurnCommit, BeforeSendCall,
	AfterSendCall, AfterSendRecord}
