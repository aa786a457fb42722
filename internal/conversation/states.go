package conversation

import (
	"context"
	"errors"
	"fmt"

	"github.com/looplab/fsm"
)

// The events of a talk. Facts are taken whenever they come, so most states can follow
// any other: the event says what is done next, the law below from where it may be.
const (
	eventIntroduce = "introduce"
	eventIdentify  = "identify"
	eventMeasure   = "measure"
	eventRecheck   = "recheck"
	eventChoose    = "choose"
	eventPicture   = "picture"
	eventConfirm   = "confirm"
	eventHandOver  = "hand_over"
	eventToStaff   = "to_staff"
	eventLapse     = "lapse"
	eventSilence   = "silence"
	eventRelease   = "release" // staff let the assistant go on, or START came
)

// talking are the states in which the assistant leads the talk.
var talking = []string{string(Opening), string(Introducing), string(Identifying), string(Measuring),
	string(Rechecking), string(Choosing), string(Picturing), string(Confirming)}

// law is who may follow whom. A handed-over lead can be taken up again where the
// customer changes a number; one that is with staff only by staff.
func law() fsm.Events {
	live := append(append([]string{}, talking...), string(Lapsed))
	again := append(append([]string{}, live...), string(HandedOver))
	all := append(append([]string{}, again...), string(WithStaff))
	return fsm.Events{
		{Name: eventIntroduce, Src: live, Dst: string(Introducing)},
		{Name: eventIdentify, Src: live, Dst: string(Identifying)},
		{Name: eventMeasure, Src: again, Dst: string(Measuring)},
		{Name: eventRecheck, Src: again, Dst: string(Rechecking)},
		{Name: eventChoose, Src: live, Dst: string(Choosing)},
		{Name: eventPicture, Src: live, Dst: string(Picturing)},
		{Name: eventConfirm, Src: again, Dst: string(Confirming)},
		{Name: eventHandOver, Src: again, Dst: string(HandedOver)},
		{Name: eventToStaff, Src: all, Dst: string(WithStaff)},
		{Name: eventLapse, Src: talking, Dst: string(Lapsed)},
		{Name: eventSilence, Src: append(append([]string{}, all...), string(Silenced)), Dst: string(Silenced)},
		{Name: eventRelease, Src: []string{string(WithStaff), string(Silenced)}, Dst: string(Introducing)},
	}
}

var eventFor = map[State]string{
	Introducing: eventIntroduce, Identifying: eventIdentify, Measuring: eventMeasure,
	Rechecking: eventRecheck, Choosing: eventChoose, Picturing: eventPicture,
	Confirming: eventConfirm, HandedOver: eventHandOver, WithStaff: eventToStaff,
	Lapsed: eventLapse, Silenced: eventSilence,
}

// move takes the talk from one state to the next by the law. Staying is no failure.
func move(from, to State) (State, error) { return happen(from, eventFor[to]) }

// happen is what an event makes of a state.
func happen(from State, event string) (State, error) {
	machine := fsm.NewFSM(string(from), law(), nil)
	err := machine.Event(context.Background(), event)
	var stayed fsm.NoTransitionError
	if err != nil && !errors.As(err, &stayed) {
		return from, fmt.Errorf("a talk that is %s: %w", from, err)
	}
	return State(machine.Current()), nil
}

// Diagram is the law as a mermaid state diagram, for the docs.
func Diagram() (string, error) {
	return fsm.VisualizeWithType(fsm.NewFSM(string(Opening), law(), nil), fsm.MermaidStateDiagram)
}
