import { signal } from '@preact/signals'
import { ask } from '../ask'
import type { Answer } from '../kinds'
import { freshId } from '../window'

// What was done at the loom and is not in the book yet. It is kept on the device, for all
// windows, so that a window that was closed while the computer was away loses nothing: the
// next one sends it. Sent twice it counts once.

export type Deed = { id: string; doc: number; route: string; body: Record<string, unknown> }

const prefix = 'sley-loom-'
const own = prefix + freshId()

export const queue = signal<Deed[]>(adopted())
export const refusal = signal('') // why the computer lets nothing in any more

queue.subscribe((deeds) => store(deeds))

// adopted are the deeds that windows before this one left behind.
function adopted(): Deed[] {
  const out: Deed[] = []
  try {
    for (const key of Object.keys(localStorage).filter((one) => one.startsWith(prefix))) {
      const deeds = JSON.parse(localStorage.getItem(key) ?? '[]') as Deed[]
      out.push(...deeds)
      localStorage.removeItem(key)
    }
  } catch {
    // closed to us, or not readable
  }
  return out
}

function store(deeds: Deed[]): void {
  try {
    if (deeds.length > 0) localStorage.setItem(own, JSON.stringify(deeds))
    else localStorage.removeItem(own)
  } catch {
    // full or forbidden: it is kept as long as the page is
  }
}

type Ears = { came: (deed: Deed, value: { place?: number }) => void; wrong: (deed: Deed, answer: Answer<unknown>) => void; empty: () => void }

let ears: Ears = { came: () => undefined, wrong: () => undefined, empty: () => undefined }

// heed says who hears what became of deeds.
export function heed(by: Ears): void {
  ears = by
}

// did adds a deed and sends it when its turn comes.
export function did(doc: number, route: string, body: Record<string, unknown>): void {
  queue.value = [...queue.value, { id: freshId(), doc, route, body }]
  void send()
}

// Pauses between tries to reach a computer that is away, in milliseconds.
const shortest = 500
const longest = 8_000

let sending = false
let pause = shortest
let timer = 0

// send sends what waits, one after another, in order.
export async function send(): Promise<void> {
  clearTimeout(timer)
  if (sending) return
  sending = true
  while (queue.value[0] && !refusal.value) {
    const deed = queue.value[0]
    const answer = await ask<{ place?: number }>(`/api/documents/${deed.doc}/${deed.route}`, { id: deed.id, ...deed.body })
    if (!settled(deed, answer)) break
  }
  sending = false
  if (queue.value.length === 0) ears.empty()
}

// settled says whether a deed is done with; one that could not be sent stays, and is sent
// again.
function settled(deed: Deed, answer: Answer<{ place?: number }>): boolean {
  if (answer.is === 'gone' || answer.is === 'fault') {
    timer = window.setTimeout(() => void send(), pause)
    pause = Math.min(pause * 2, longest)
    ears.wrong(deed, answer)
    return false
  }
  pause = shortest
  if (answer.is === 'refused') {
    ears.wrong(deed, answer)
    return false
  }
  queue.value = queue.value.filter((one) => one.id !== deed.id)
  if (answer.is === 'done') ears.came(deed, answer.value)
  else ears.wrong(deed, answer)
  return true
}
