import { signal } from '@preact/signals'
import type { Loom, Step } from './kinds'
import { doneOf, loom, move, view } from './state'
import { say } from './voice'
import { backward, endedAt, onward, partAt, whereIs } from './where'

// One stroke of the work onward or back, by whichever way it was given: a tap, a key, a
// foot switch.

// checked is the end of a part that was checked: its step and place.
export const checked = signal('')

// toCheck is the part that is to be checked before the work goes on.
export function toCheck(step: Step, done: number) {
  const part = endedAt(step, done)
  return part?.check && step.per > 0 && checked.value !== `${step.id} ${done}` ? part : undefined
}

const stepNow = (now: Loom): Step | undefined => now.steps.find((one) => one.id === view.peek())

// go is one stroke onward; false where there is none.
export function go(): boolean {
  const now = loom.peek()
  if (!now?.started) return false
  if (view.peek() === 'weaving') return weave(now, 1)
  const step = stepNow(now)
  if (!step) return false
  const done = doneOf(now, step.id)
  if (toCheck(step, done)) {
    checked.value = `${step.id} ${done}`
    aloud(step, done)
    return true
  }
  const to = onward(step, done)
  move(step.id, to)
  const ended = endedAt(step, to)
  if (ended?.check && step.per > 0) say(ended.check[ended.check.length - 1])
  else aloud(step, to)
  return true
}

// back is one stroke back.
export function back(): boolean {
  const now = loom.peek()
  if (!now?.started) return false
  if (view.peek() === 'weaving') return weave(now, -1)
  const step = stepNow(now)
  if (!step) return false
  const done = doneOf(now, step.id)
  const to = backward(step, done)
  checked.value = ''
  move(step.id, to)
  checked.value = `${step.id} ${to}`
  aloud(step, to)
  return true
}

// aloud says the item that comes, or the part.
export function aloud(step: Step, done: number): void {
  if (done >= step.total) return
  const part = partAt(step, done)
  if (!part) return
  if (step.each) say(part.items?.[done - part.from]?.aloud)
  else if (step.per === 0) say(part.big ? `${part.big}. ${part.title}` : part.title + '. ' + (part.items ?? []).map((item) => item.aloud ?? item.text).join('. '))
  else say(part.stops?.find((stop) => stop.at === done)?.says ?? String(done - part.from))
}

function weave(now: Loom, by: 1 | -1): boolean {
  const weaving = now.weaving
  if (!weaving) return false
  const woven = doneOf(now, 'weaving')
  const to = Math.min(Math.max(woven + by, 0), weaving.total)
  if (to === woven) return true
  move('weaving', to)
  pickAloud(now, to)
  return true
}

// pickAloud says the pick that comes.
export function pickAloud(now: Loom, woven: number): void {
  const weaving = now.weaving
  const at = weaving && whereIs(weaving, woven)
  if (!weaving || !at) return
  const press = weaving.presses[at.kind.presses[at.in] ?? -1]
  const before = at.in > 0 ? at.kind.weft[at.in - 1] : -1
  const yarn = at.kind.weft[at.in]
  const changes = yarn !== before && weaving.yarns.length > 1 ? weaving.yarns[yarn ?? 0]?.name : ''
  say([changes, press?.aloud].filter(Boolean).join(', '))
}
