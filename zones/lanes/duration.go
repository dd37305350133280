package lanes

import "time"

// Duration is how long the plan takes: all walking at one speed, and the time
// of each turn and refill on top.
func (p Plan) Duration() time.Duration {
	practice := p.Work.Practice
	seconds := (p.SpreadLength()+p.TravelLength())/practice.Speed + float64(p.Turns)*practice.Turn + float64(p.Refills())*practice.Refill
	return time.Duration(seconds * float64(time.Second))
}
