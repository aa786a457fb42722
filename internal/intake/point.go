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

// Points lists all of them.
var Points = []Point{BeforeReceiveCommit, AfterReceiveCommit, BeforeTurnCommit, AfterTurnCommit, BeforeSendCall,
	AfterSendCall, AfterSendRecord}
