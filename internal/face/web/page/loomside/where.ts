import type { Kind, Move, Part, Piece, Step, Weaving } from './kinds'

// Where the work stands: plain functions of what the server said, so that it goes on while
// the server is away.

// ledTo is where work that stands at a place comes to by a move: the rule of the book. A
// step onward never takes it back, a step back counts only where the work still stands
// where it began.
export function ledTo(place: number, move: Move): number {
  if (move.set) return move.place
  if (move.place >= move.from && place >= move.from) return Math.max(place, move.place)
  if (move.place < move.from && place === move.from) return move.place
  return place
}

// partAt is the part of a step that the work is in: the one to come where it stands between
// two; the last when all is done.
export function partAt(step: Step, done: number): Part | undefined {
  return step.parts.find((part) => done < part.to) ?? step.parts[step.parts.length - 1]
}

// endedAt is the part that the work has just come to the end of.
export const endedAt = (step: Step, done: number): Part | undefined => step.parts.find((part) => done > 0 && part.to === done)

// onward is the place after one stroke of the work: so much as a stroke is, not past the
// next thing to do on the way, nor past the part.
export function onward(step: Step, done: number): number {
  const part = partAt(step, done)
  if (!part || done >= step.total) return done
  if (step.per === 0) return part.to
  const stop = part.stops?.find((one) => one.at > done)?.at ?? part.to
  return Math.min(done + step.per, part.to, Math.max(stop, done + 1))
}

// backward is the place one stroke before.
export function backward(step: Step, done: number): number {
  const part = [...step.parts].reverse().find((one) => one.from < done)
  if (!part) return 0
  return step.per === 0 ? part.from : Math.max(done - step.per, part.from)
}

// Where is a pick of the warp.
export type Where = { piece: Piece; kind: Kind; number: number; in: number }

// whereIs finds the pick that comes after so many; after the last it is the last piece's end.
export function whereIs(weaving: Weaving, woven: number): Where | undefined {
  let number = weaving.pieces.findIndex((piece) => woven < piece.before + (weaving.kinds[piece.kind]?.picks ?? 0))
  if (number < 0) number = weaving.pieces.length - 1
  const piece = weaving.pieces[number]
  const kind = piece && weaving.kinds[piece.kind]
  return piece && kind && { piece, kind, number, in: woven - piece.before }
}

// stretchAt is what is woven after so many picks of a piece.
export const stretchAt = (kind: Kind, at: number): string => kind.stretches.find((s) => at < s.to)?.says ?? kind.stretches[kind.stretches.length - 1]?.says ?? ''

// motifAt is the motif and the pick of it that come after so many picks of a piece.
export function motifAt(kind: Kind, at: number): { motif: number; pick: number } | undefined {
  const { before, picks, times } = kind.motif
  const n = at - before
  if (picks < 2 || n < 0 || n >= picks * times) return undefined
  return { motif: Math.floor(n / picks) + 1, pick: (n % picks) + 1 }
}

// tapeAt is what the tape should read after so many picks of a piece.
export function tapeAt(kind: Kind, at: number): string {
  let says = ''
  for (const one of kind.tape) {
    if (one.picks > at) break
    says = one.says
  }
  return says
}
