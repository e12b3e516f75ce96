import { signal } from '@preact/signals'
import { ask } from '../ask'
import { doc, readDoc } from '../doc'
import { heard } from '../heard'
import { keep, kept } from '../keep'
import type { Answer, Problem } from '../kinds'
import * as steps from '../past'
import { shared } from '../same'
import { past, strokes } from '../state'
import { windowId } from '../window'
import { type Table, tableOf, type TableSaid } from './cloth'
import { type Changed, spliced, type Splices } from './splice'
import { type Crossings, crossingsOf } from './strokes'

// The draft that is drawn on, and what the server makes of strokes. A stroke is seen at
// once: the page makes it by itself as far as it can, and what the server answers takes its
// place; crossings, of which only the server knows how they come about, are pointed out until
// then. Strokes are sent one after another, each upon what the one before made.

export type AnyAct = { do: string; [key: string]: unknown }

type Gesture = { acts: readonly AnyAct[]; splices: Splices }

type Said = Omit<TableSaid, 'frozen' | 'fill'> & { fixed?: string; whole?: boolean; uncoloured?: boolean; fill?: { threading?: [number, number]; picks?: [number, number] } }

// Same is the answer where nothing is newer than what is known.
type Same = { version: number; fixed?: string }

type Answered = Changed & { version: number; fill?: Said['fill']; told: Problem[]; problems: Problem[] }

export type Area = { part?: string; ends?: [number, number]; picks?: [number, number]; numbers?: number[] }
export type Remedy = { says: string; acts: AnyAct[]; swap?: boolean }
export type Finding = { topic: string; severity: 'wrong' | 'care' | 'note'; says: string; means?: string; place?: Area; remedies: Remedy[] }
type Looked = { version: number; uses: string[]; findings: Finding[] }

export const table = signal<Table | null>(null) // as it is shown
export const awaited = signal<Crossings>([]) // strokes in the drawdown that are not answered yet
export const fixed = signal('') // why nothing can be drawn
export const uncoloured = signal(false) // its threads have the colours of their yarns
export const whole = signal(false) // of a warp: every end and pick
export const problems = signal<Problem[]>([]) // of what was drawn last
export const findings = signal<Finding[]>([])
export const uses = signal<string[]>([])
export const use = signal('')
export const start = signal('')
export const loom = signal('') // of the shelf, that a draft of the shelf is for
export const stale = signal(false) // another window drew; the last strokes were not made

let of = 0
let wrong: ReadonlySet<string> | null = null // what was wrong with the document before
let known: Table | null = null // as the server has it
let queue: Gesture[] = []
let sending = false

// asAsked is how the draft is asked for: as it is written, or whole.
export const asAsked = (): string => `as=${whole.value ? 'whole' : 'written'}`

const address = (id: number, more = ''): string => `/api/documents/${id}/table${more}?${asAsked()}`

// readTable reads the draft anew, and sends what is still to be drawn on it.
export async function readTable(id: number): Promise<boolean> {
  if (id !== of) begin(id)
  if (known && doc.peek()?.id === id) return readSince(id, known.version)
  const [fine, answer] = await Promise.all([readDoc(id), ask<Said>(address(id))])
  return (await read(id, answer, fine)) && fine
}

// readSince asks for no more than whether there is something newer, and reads the document
// itself only then: after a stroke of its own the page has all that it shows.
async function readSince(id: number, version: number): Promise<boolean> {
  const answer = await ask<Said | Same>(`${address(id)}&since=${version}`)
  if (id !== of) return true
  if (answer.is === 'done' && !('threading' in answer.value)) {
    if ((answer.value.fixed ?? '') === fixed.value) return read(id, answer, true)
    known = null
    return readTable(id)
  }
  const newer = answer.is !== 'done' || !known || answer.value.version > known.version
  const fine = newer ? await readDoc(id) : true
  return (await read(id, answer as Answer<Said>, fine)) && fine
}

// read takes in what was answered.
async function read(id: number, answer: Answer<Said | Same>, fine: boolean): Promise<boolean> {
  if (id !== of) return true
  if (answer.is === 'problems') {
    problems.value = answer.problems
    known = table.value = null
    return fine
  }
  if (answer.is === 'trouble') return fine
  if (!heard(answer)) return false
  const { value } = answer
  if ('threading' in value && (known === null || value.version > known.version)) settle(value) // an earlier one comes late
  void send()
  if (lookedAt() !== looked) await look()
  return fine
}

function begin(id: number): void {
  of = id
  known = table.value = null
  problems.value = []
  findings.value = []
  looked = ''
  wrong = null
  ;[use.value, start.value, loom.value] = kept(`looking-${id}`, ['', '', ''])
  stale.value = false
  whole.value = false
  queue = kept<Gesture[]>(`strokes-${id}`, [])
  noted()
}

// noted tells how many strokes wait, and which crossings they are of.
function noted(): void {
  strokes.value = queue.length
  awaited.value = queue.length === 0 && awaited.peek().length === 0 ? awaited.peek() : crossingsOf(queue.flatMap((gesture) => gesture.acts))
}

function settle(said: Said): void {
  const nothing: [number, number] = [0, 0]
  const { fixed: why, fill, whole: _, uncoloured: plain, ...rest } = said
  const read = tableOf({ ...rest, frozen: !!why, ...(fill ? { fill: { threading: fill.threading ?? nothing, picks: fill.picks ?? nothing } } : {}) })
  fixed.value = why ?? ''
  uncoloured.value = !!plain
  known = read
  show()
}

// show is what the server has, with what it has not answered yet.
function show(): void {
  table.value = known && queue.reduce((now, gesture) => spliced(now, { splices: gesture.splices }), known)
}

export function setWhole(to: boolean): void {
  whole.value = to
  known = null
  void readTable(of)
}

// draw makes acts; splices are what of them the page can make by itself.
export function draw(acts: readonly AnyAct[], splices: Splices = {}): void {
  if (!known || fixed.value || acts.length === 0) return
  problems.value = []
  stale.value = false
  queue = [...queue, { acts, splices }]
  remember()
  if (table.value) table.value = spliced(table.value, { splices })
  void send()
}

function remember(): void {
  noted()
  keep(`strokes-${of}`, queue)
}

async function send(): Promise<void> {
  if (sending) return
  sending = true
  const id = of
  let drew = false
  while (queue[0] && known && id === of) {
    const gesture = queue[0]
    const base = known.version
    const answer = await ask<Answered>(address(id), { base, window: await windowId, acts: gesture.acts })
    if (id !== of) break
    if (answer.is === 'gone' || answer.is === 'refused') {
      heard(answer)
      break // it is sent again when the server is back
    }
    queue = queue.slice(1)
    if (answer.is === 'done') {
      drew = true
      answered(id, base, answer.value)
    } else if (answer.is === 'problems') {
      problems.value = answer.problems
    } else if (answer.is === 'conflict') {
      stale.value = true
      queue = []
      await reread(id)
    } else heard(answer)
    remember()
    show()
  }
  sending = false
  if (drew) void look()
}

async function reread(id: number): Promise<void> {
  const answer = await ask<Said>(address(id))
  if (answer.is === 'done' && id === of) settle(answer.value)
}

function answered(id: number, base: number, { fill: _, told, problems: all, ...changed }: Answered): void {
  if (changed.version !== base) past.value = steps.changed(past.value, id, changed.version)
  if (known?.version === base) known = spliced(known, changed) // else it was read anew meanwhile
  const shown = doc.peek()
  if (shown?.id === id && shown.version < changed.version) doc.value = { ...shown, version: changed.version }
  problems.value = [...told, ...all.filter((one) => wrong && !wrong.has(keyOf(one)))]
  wrong = new Set(all.map(keyOf))
}

const keyOf = ({ code, path, says }: Problem): string => [code, path, says].join(' ')

// One look at what there is to tell is on its way at a time; what was looked at last is not
// looked at again.
let looking = false
let again = false
let looked = ''

const lookedAt = (): string => [of, known?.version, whole.value, use.value, start.value, loom.value].join(' ')

export async function look(): Promise<void> {
  if (looking) {
    again = true
    return
  }
  looking = true
  do {
    again = false
    const id = of
    looked = lookedAt()
    keep(`looking-${id}`, [use.value, start.value, loom.value])
    const answer = await ask<Looked>(`${address(id, '/findings')}&use=${use.value}&start=${start.value}&loom=${loom.value}`)
    if (answer.is === 'done' && id === of) {
      findings.value = shared(findings.value, answer.value.findings)
      uses.value = shared(uses.value, answer.value.uses)
    }
  } while (again)
  looking = false
}

// tryOut asks what would come of acts.
export async function tryOut(acts: readonly AnyAct[]): Promise<Table | Problem[] | null> {
  if (!known) return null
  const answer = await ask<Answered>(address(of), { base: known.version, window: await windowId, acts, try: true })
  if (answer.is === 'done') return spliced(known, answer.value)
  return answer.is === 'problems' ? answer.problems : null
}
