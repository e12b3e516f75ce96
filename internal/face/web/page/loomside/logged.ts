import { signal } from '@preact/signals'
import { ask } from '../ask'
import { heard } from '../heard'
import { keep, kept } from '../keep'
import type { Figure } from '../kinds'
import { refreshSoon } from '../refresh'
import { freshId, windowId } from '../window'

// LogEvent is something that was written into the log.
export type LogEvent = { id: string; what: string; says: string; at: string; place?: number; note?: string; minutes?: number; cancels?: string }

export type Sitting = { event: string; since: string; minutes: number; forgotten?: boolean }

export type Hours = { id: number; sitting?: Sitting; woven: number; broken: number; figures: Figure[] }

export type LogNow = {
  id: number
  events: LogEvent[] // those that stand, the newest first
  hours: Hours
  read: number // when, by the clock of this page
}

// logNow is the log of the warp that is shown.
export const logNow = signal<LogNow | null>(null)

let wanted = 0

// readLog reads the log of a warp and its hours, at once.
export async function readLog(id: number): Promise<void> {
  wanted = id
  const [events, hours] = await Promise.all([ask<LogEvent[]>(`/api/documents/${id}/events?topic=log`), ask<Hours>(`/api/documents/${id}/hours`)])
  if (events.is !== 'done' || hours.is !== 'done' || wanted !== id) return
  logNow.value = { id, events: standing(events.value), hours: hours.value, read: Date.now() }
}

// standing leaves out what was taken back, and turns the newest to the front.
export function standing(events: LogEvent[]): LogEvent[] {
  const gone = new Set(events.map((e) => e.cancels))
  return events.filter((e) => !e.cancels && !gone.has(e.id)).reverse()
}

// sits is how many minutes the sitting has lasted by now: what the server said, and what
// went by here since. The two clocks may differ.
export const sits = (sitting: Sitting, read: number, now: number): number => sitting.minutes + Math.max(0, Math.floor((now - read) / 60_000))

// lastAdvance is the pick at which the warp was wound on last, where that is known.
export const lastAdvance = (events: readonly LogEvent[]): number => events.find((e) => e.what === 'advanced' && e.place)?.place ?? 0

type Mark = { id: string; said: string }

// markOf names what is to be written. What is sent again because no answer came has the name
// it had, through a reload too, and counts once.
export function markOf(name: string, said: string): string {
  const was = kept<Mark | null>(name, null)
  if (was && was.said === said) return was.id
  const id = freshId()
  keep(name, { id, said })
  return id
}

type What = { what?: string; note?: string; minutes?: number; place?: number }

// write writes into the log; true once the server has it. The place is not part of what it
// is known by: it may be read anew before it is sent again.
export async function write(id: number, route: string, what: What): Promise<boolean> {
  const name = `log-sent-${id}-${route}`
  const mark = markOf(name, JSON.stringify({ ...what, place: 0 }))
  const answer = await ask<{ id: string }>(`/api/documents/${id}/${route}`, { ...what, id: mark, window: await windowId })
  if (answer.is !== 'gone') keep(name, null)
  const done = heard(answer)
  await after(id)
  return done
}

// takeBack takes an entry back.
export async function takeBack(id: number, event: string): Promise<void> {
  heard(await ask(`/api/events/${event}/cancel`, { window: await windowId, note: '' }))
  await after(id)
}

// after shows what became of it here, and what follows from it on the rest of the page.
export async function after(id: number): Promise<void> {
  await readLog(id)
  refreshSoon()
}
