import { computed, signal } from '@preact/signals'
import { askDoc, askReckoning } from './ask'
import { settings } from './edit'
import { heard } from './heard'
import type { Json } from './kinds'
import type { Doc, Find, Reckoning } from './kinds_doc'
import { perPath, shared } from './same'
import { here } from './place'
import { edits } from './state'
import { inPlace } from './reckoned'
import { at } from './tree'

// The document that is open, and of a warp its numbers.

export const doc = signal<Doc | null>(null)
export const docName = computed(() => doc.value?.name)
export const lost = signal(false) // there is no such document
export const numbers = signal<Reckoning | null>(null)
export const reckoning = signal(false) // numbers are on their way

// open are the figures whose working is shown, find what is sought backwards. Both belong
// to the window and to one document.
export const open = signal<string[]>([])
export const find = signal<Find | null>(null)

// wanted is the document that the page is at; answers for another come too late.
let wanted = 0

// readDoc reads the open document anew.
export async function readDoc(id: number): Promise<boolean> {
  if (id !== wanted) begin(id)
  const answer = await askDoc(id)
  if (id !== wanted) return true
  if (answer.is === 'trouble' && answer.status === 404) {
    lost.value = true
    return true
  }
  if (!heard(answer)) return false
  doc.value = shared(doc.value, answer.value)
  if (answer.value.kind === 'warp') await reckon()
  return true
}

function begin(id: number): void {
  wanted = id
  doc.value = null
  numbers.value = null
  lost.value = false
  open.value = []
  find.value = null
}

// edit is what is typed at the open document and not in the book yet.
export const edit = computed(() => (doc.value ? edits.value[doc.value.id] : undefined))

// valueAt is what stands at a path, with what is being typed over it.
export const valueAt = perPath(foundAt)

function foundAt(path: string): Json | undefined {
  const typed = edit.value?.value
  if (typed) {
    const own = typed[path]
    if (own !== undefined) return own
    const above = Object.keys(typed).find((p) => path.startsWith(`${p}.`) || path.startsWith(`${p}[`))
    if (above !== undefined) return at(typed[above], path.slice(above.length).replace(/^\./, ''))
  }
  return at(doc.value?.plan, path)
}

// One question for numbers is on its way at a time; what changes meanwhile is asked once
// it is answered. So numbers follow the keys as fast as they can, and never fall behind.
let asking = false
let again = false

// While she types at the piece only what stands beside it is asked for. The rest follows
// once that is saved, or when she goes on to another stage.
const beside = ['found', 'glance', 'pieces'] as const

// besideNow are the parts that are enough; none: all are wanted.
const besideNow = (): readonly string[] => (here.value.page === 'warp' && here.value.stage === 'piece' && numbers.value && open.value.length === 0 ? beside : [])

let all = true

export async function reckon(): Promise<void> {
  all = true
  await follow()
}

// reckonKey is reckon for a key in a field.
export const reckonKey = (): Promise<void> => follow()

async function follow(): Promise<void> {
  if (asking) {
    again = true
    return
  }
  asking = true
  reckoning.value = true
  do {
    again = false
    await reckonOnce()
  } while (again)
  asking = false
  reckoning.value = false
}

async function reckonOnce(): Promise<void> {
  const now = doc.value
  if (now?.kind !== 'warp') return
  const typed = edits.value[now.id]
  const set = typed && typed.state !== 'conflict' ? settings(typed) : []
  const only = all ? [] : besideNow()
  all = false
  const answer = await askReckoning(now.id, set, open.value, only, find.value ?? undefined)
  if (now.id !== wanted) return
  if (answer.is === 'done') numbers.value = shared(numbers.value, inPlace(numbers.value, answer.value, only))
  else if (answer.is === 'gone' || answer.is === 'refused') again = false
  if (answer.is !== 'problems') heard(answer)
}

// explain opens the working of a figure, or closes it.
export function explain(id: string): void {
  open.value = open.value.includes(id) ? open.value.filter((o) => o !== id) : [...open.value, id]
  void reckon()
}

// seek looks for another number backwards; nothing ends that.
export function seek(to: Find | null): void {
  find.value = to
  void reckon()
}
