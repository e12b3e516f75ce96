package present

import "sley/internal/engine/finishing"

// stepSays is a step in a few words, and how it is done.
type stepSays struct{ says, how string }

// afterWords say the steps after the last pick. They are common practice, no source.
var afterWords = map[finishing.ID]stepSays{
	finishing.Hemstitch:       {"Hemstitch on the loom", "Do it while the warp is tight: the first end after some picks, the last before the cloth is cut off. Two or three ends to a stitch, two picks deep."},
	finishing.MeasureOnLoom:   {"Measure on the loom", "Read the length as the tape was read all along, and the width where the cloth is beaten."},
	finishing.CutOff:          {"Cut the cloth off", "Let the tension off first, by the brake. Cut behind the last piece with enough warp to tie or to make a fringe."},
	finishing.Secure:          {"Secure the raw edges", "Two rows of small machine stitches or an oversewn edge on each side of every cut to come, before anything is cut or handled much."},
	finishing.Rest:            {"Let it rest", "Lay it flat without tension, so that it draws in as far as it will."},
	finishing.MeasureRelaxed:  {"Measure the relaxed cloth", "On a flat table, smoothed but not stretched."},
	finishing.Mend:            {"Mend", "Look over both faces against the light. Needle in what was skipped or broken, along the path of the thread."},
	finishing.CutApart:        {"Cut the pieces apart", "Cut along a pick, between the secured edges."},
	finishing.FinishFringe:    {"Make the fringe", "Comb it straight, and trim it only when it is done."},
	finishing.HemBefore:       {"Hem, before washing", "Turn the cloth in, fold the hem, press it with the fingers and sew it by hand or machine."},
	finishing.Wash:            {"Wash", "With a little mild soap. Let it soak before it is moved, and rinse at the same warmth."},
	finishing.Full:            {"Wash and full", "Warm water, soap and rubbing. Stop when the hand and the size are right, then rinse at the same warmth."},
	finishing.Dry:             {"Dry", "Roll it in towels, pull the edges straight, and keep it out of the sun."},
	finishing.Press:           {"Press", "From the back, along the grain. Try a corner first."},
	finishing.Trim:            {"Trim the tails", "Cut what hangs out on either face close to the cloth, never before the wash has drawn it up."},
	finishing.Seam:            {"Seam the panels", "Lay edge to edge, pick to pick, and join them by hand."},
	finishing.HemAfter:        {"Hem", "Turn the cloth in, fold the hem, press it and sew it by hand or machine."},
	finishing.RestAgain:       {"Let it rest again", "Dry and flat, without tension."},
	finishing.MeasureFinished: {"Measure the finished cloth", "On a flat table: between the hems, without the fringe. These sizes teach the next plan."},
}

// finishNotes say how a step is done for one cloth.
var finishNotes = map[finishing.Note]string{
	finishing.FloatsOff:   "Take the weights off the floating selvedges first.",
	finishing.OpenOut:     "Woven double, it opens out once it is off the loom: look at the fold.",
	finishing.LeaveTails:  "Leave every tail a finger long until the cloth is washed.",
	finishing.TwistFringe: "Twist two groups of ends one way until they kink, then together the other way, and knot them.",
	finishing.KnotFringe:  "Knot or twist it, a few ends at a time.",
	finishing.OnUnwashed:  "The fold is deeper than the finished hem: the wash draws it in.",
	finishing.CoolForWool: "Wool felts by rubbing, wringing and sudden changes of warmth: none of these.",
	finishing.HotForLinen: "Linen and cotton soften with warm water; the first wash does most.",
	finishing.WaterHarms:  "Water harms one of these fibres: try a sample, or damp it with steam alone.",
	finishing.LookOften:   "Look every two or three minutes and measure: fulling does not go back.",
	finishing.DoesNotFelt: "None of these fibres felts: it will come out as washed.",
	finishing.DryFlat:     "Lying flat, squared up.",
	finishing.DryHanging:  "Hanging over a round rod, or lying flat.",
	finishing.PressDamp:   "Linen while it is still damp, hard, on both faces, until it is dry.",
	finishing.SteamWool:   "Wool with steam and a cloth between; lay the iron on, do not push it.",
}

// finishCares are the cautions.
var finishCares = map[finishing.Caution]string{
	finishing.TightWarp: "A warp under tension stores much force: hold the handle before a brake or a ratchet is let go, and keep fingers and hair out of beams.",
	finishing.Dust:      "Cutting frees lint and dust, which harm lungs: air the room, and sweep up damp.",
	finishing.HotWater:  "Hot water scalds and wet cloth is heavy: wear gloves, lift little at a time, and keep children away. What the yarn’s label and your local rules say of washing comes first.",
	finishing.HotIron:   "Iron and steam burn: keep hands and cords clear.",
}

const (
	afterMost    = "At most {most}."
	afterHours   = "{hours} hours (common practice, no source)."
	afterPieces  = "{pieces} pieces."
	afterTitle   = "After the last pick, {name}"
	afterCites   = "The order and how each step is done are common practice, no source."
	afterWrite   = "write down"
	afterCare    = "care"
	afterPlanned = "planned {size}"
)
