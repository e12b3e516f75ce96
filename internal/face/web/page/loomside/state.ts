import { computed, signal } from '@preact/signals'
import { ask } from '../ask'
import { heard, stand } from '../heard'
import type { Answer } from '../kinds'
import { refreshSoon } from '../refresh'
import { said } from '../state'
import { windowId } from '../window'
import { words } from '../words'
import type { Loom, Move, Step } from './kinds'
import { type Deed, did, heed, queue, send } from './queue'
import { ledTo } from './where'

const w = words.loomside

// loom is the warp beside the loom as the book has it.
export const loom = signal<Loom | null>(null)
export const lost = signal(false) // there is no such warp
export const wrong = signal('') // what could not be written down, and why

// view is what of it is shown: the list of steps, a step, or the weaving.
export const view = signal<string>('')

// own is the name of this window, which a stroke does not wait for: two at once are two.
let own = ''
void windowId.then((id) => (own = id))

let answered = 0 // deeds that came in since the page was opened

// readLoom reads the warp. What the book said before a deed came in is not taken: it would
// show the work where it was.
export async function readLoom(id: number): Promise<boolean> {
  const before = answered
  const answer = await ask<Loom>(`/api/documents/${id}/loomside`)
  if (answer.is === 'trouble' && answer.status === 404) {
    lost.value = true
    return true
  }
  if (!heard(answer)) return false
  if (before !== answered) return readLoom(id)
  lost.value = false
  loom.value = answer.value
  return true
}

// moves are those of a step that wait to be sent.
const waitingOf = (id: number, step: string): Move[] =>
  queue.value.filter((deed) => deed.doc === id && deed.route === 'reached' && deed.body.step === step).map((deed) => deed.body as Move)

// doneOf is how much of a step is done, with what waits to be sent.
export function doneOf(now: Loom, step: string): number {
  const base = step === 'weaving' ? now.woven : (now.steps.find((one) => one.id === step)?.done ?? 0)
  return waitingOf(now.id, step).reduce(ledTo, base)
}

// waiting is how many deeds of the shown warp wait.
export const waiting = computed(() => queue.value.filter((deed) => deed.doc === loom.value?.id).length)

// move says that a step went to a place.
export function move(step: string, place: number, set = false): void {
  const now = loom.peek()
  if (!now) return
  const from = doneOf(now, step)
  if (place === from && !set) return
  said.value = ''
  wrong.value = ''
  did(now.id, 'reached', { window: own, step, place, from, set })
}

// tellLoom says something else at the loom: a reading, a weighing, a choice.
export function tellLoom(route: string, body: Record<string, unknown>): void {
  const now = loom.peek()
  if (!now) return
  wrong.value = ''
  did(now.id, route, { window: own, ...body })
}

// hear listens to what became of deeds.
export function hear(): void {
  heed({ came, wrong: wentWrong, empty: refreshSoon }) // one reading, with what the stream says of it
  void send()
}

function came(deed: Deed, value: { place?: number }): void {
  answered++
  stand({ is: 'done', value })
  const now = loom.peek()
  if (deed.route !== 'reached' || !now || now.id !== deed.doc || value.place === undefined) return
  const asked = deed.body as Move
  if (value.place !== asked.place) said.value = w.elsewhere(value.place)
  loom.value = stoodAt(now, asked.step, value.place)
}

// stoodAt is the warp with a step at a place.
const stoodAt = (now: Loom, step: string, place: number): Loom =>
  step === 'weaving' ? { ...now, woven: place } : { ...now, steps: now.steps.map((one): Step => (one.id === step ? { ...one, done: place } : one)) }

function wentWrong(_: Deed, answer: Answer<unknown>): void {
  stand(answer)
  if (answer.is === 'problems') wrong.value = answer.problems.map((one) => one.says + (one.fix ? `; ${one.fix}` : '')).join('. ')
  if (answer.is === 'trouble') wrong.value = answer.trouble.says
}
