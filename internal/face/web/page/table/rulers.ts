import { dotAt, type Axis } from './axis'
import { rectOf } from './hit'
import { columnOf, endAt, endNumber, movedTo, pickAt, rowOf, seen, type View } from './view'

// The numbers beside a drawing, the overview of it, and the lines that are stronger.

// Label is a number in a ruler: where its middle stands along the ruler, in dots of the
// canvas, what it says, and which thread, shaft or treadle it is of.
export type Label = { readonly at: number; readonly number: number; readonly of: number }

// fifth is how often a line is stronger and a thread is numbered.
export const fifth = 5

const threadSteps = [5, 10, 20, 50, 100, 200, 500, 1000, 2000, 5000, 10_000, 20_000, 50_000, 100_000]
const shaftSteps = [1, ...threadSteps]

// numbered chooses which of a ruler have their number written: those that come first, as far
// as they do not touch, and then every one whose number is a multiple of the smallest step
// at which they have room. room is what a number takes.
function numbered(all: Label[], first: Label[], room: number, steps: number[]): Label[] {
  const taken: Label[] = []
  const far = (a: Label) => (b: Label): boolean => Math.abs(a.at - b.at) >= room
  for (const label of first) if (taken.every(far(label))) taken.push(label)
  for (const label of stepped(all, room, steps)) if (taken.every(far(label))) taken.push(label)
  return taken.sort((a, b) => a.at - b.at)
}

function stepped(all: Label[], room: number, steps: number[]): Label[] {
  for (const step of steps) {
    const some = all.filter(({ number }) => number % step === 0)
    if (some.every((label, i) => i === 0 || Math.abs(label.at - (some[i - 1]?.at ?? 0)) >= room)) return some
  }
  return []
}

// endLabels are the numbers of the ends in sight, each of which takes so much room: the first
// and the last of all, those at the ends of runs, and as many others as fit.
export function endLabels(view: View, room: number, runs: readonly number[] = []): Label[] {
  const { c0, c1 } = seen(view)
  const { sight, cols, left, bands } = view
  const at = (column: number): number => middle(cols, column, view.dots, left, bands.drawdown.x, bands.drawdown.w, room)
  const number = (column: number): number => endNumber(sight, endAt(sight, column))
  return threadLabels(c0, c1, cols.n, { at, number, of: (column) => endAt(sight, column) }, runs.map((end) => columnOf(sight, end)), room)
}

// pickLabels are those of the picks.
export function pickLabels(view: View, room: number, runs: readonly number[] = []): Label[] {
  const { r0, r1 } = seen(view)
  const { sight, rows, top, bands } = view
  const at = (row: number): number => middle(rows, row, view.dots, top, bands.drawdown.y, bands.drawdown.h, room)
  return threadLabels(r0, r1, rows.n, { at, number: (row) => pickAt(sight, row) + 1, of: (row) => pickAt(sight, row) }, runs.map((pick) => rowOf(sight, pick)), room)
}

type Numbering = { readonly [K in keyof Label]: (i: number) => number }

function threadLabels(from: number, to: number, n: number, { at, number, of }: Numbering, runs: number[], room: number): Label[] {
  const label = (i: number): Label => ({ at: at(i), number: number(i), of: of(i) })
  const fifths: Label[] = []
  for (let i = from; i < to; i++) if (number(i) % fifth === 0) fifths.push(label(i))
  const first = [0, n - 1, ...runs].filter((i) => i >= from && i < to)
  return numbered(fifths, [...new Set(first)].map(label), room, threadSteps)
}

// middle is the middle of a thread in sight, moved so that its number stays over the cloth.
function middle(axis: Axis, i: number, dots: number, off: number, at: number, long: number, room: number): number {
  const v = (dotAt(axis, i, dots) + dotAt(axis, i + 1, dots)) / 2 - off
  return at + (room >= long ? long / 2 : Math.min(Math.max(v, room / 2), long - room / 2))
}

// shaftLabels are the numbers of the shafts beside the threading, treadleLabels those above
// treadling or lift plan: each where there is room.
export function shaftLabels(view: View, room: number): Label[] {
  return sideLabels(view.sight.extent.shafts, room, (shaft) => {
    const r = rectOf(view, { part: 'shafts', shaft })
    return r && r.y + r.h / 2
  })
}

export function treadleLabels(view: View, room: number): Label[] {
  return sideLabels(view.sight.extent.across, room, (treadle) => {
    const r = rectOf(view, { part: 'treadles', treadle })
    return r && r.x + r.w / 2
  })
}

function sideLabels(n: number, room: number, at: (i: number) => number | null): Label[] {
  const all = Array.from({ length: n }, (_, k) => ({ at: at(k + 1) ?? NaN, number: k + 1, of: k + 1 })).filter((label) => !Number.isNaN(label.at))
  const ends = [all[0], all.at(-1)].filter((label) => label !== undefined)
  return numbered(all, [...new Set(ends)], room, shaftSteps)
}

// isStrong reports whether the line between the thread of that number and the next is a
// stronger one.
export const isStrong = (a: number, b: number): boolean => Math.min(a, b) % fifth === 0

// Part of an overview that is in sight, as shares of its width and its height.
export type Shown = { readonly x: number; readonly y: number; readonly w: number; readonly h: number }

export function shownIn({ cols, rows, dots, left, top, bands: { drawdown } }: View): Shown {
  const [wide, high] = [Math.max(dotAt(cols, cols.n, dots), 1), Math.max(dotAt(rows, rows.n, dots), 1)]
  return { x: left / wide, y: top / high, w: drawdown.w / wide, h: drawdown.h / high }
}

// broughtTo moves the sight so that a point of an overview, in shares of it, is its middle.
export function broughtTo(view: View, x: number, y: number): View {
  const { cols, rows, dots, bands } = view
  return movedTo(view, x * dotAt(cols, cols.n, dots) - bands.drawdown.w / 2, y * dotAt(rows, rows.n, dots) - bands.drawdown.h / 2)
}
