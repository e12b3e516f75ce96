import { askAct, askChange, askClearDemo } from './ask'
import { hand } from './bench/hand'
import { doc, reckon, reckonKey } from './doc'
import * as edit from './edit'
import { heard, stand } from './heard'
import type { Answer, Json, Saved } from './kinds'
import * as steps from './past'
import { refresh, refreshSoon } from './refresh'
import { edits, past, said, setEdit, stepping, strokes } from './state'
import { windowId } from './window'
import { words } from './words'

// settled is how long a field is left alone before what was typed in it is saved, in
// milliseconds.
const settled = 800

const timers = new Map<number, number>()

type Known = { id: number; version: number; name: string }

// known finds a document that is shown.
function known(id: number): Known | undefined {
  return doc.value?.id === id ? doc.value : hand.items.value?.find((w) => w.id === id)
}

const nameOf = (id: number): string => known(id)?.name ?? edits.value[id]?.name ?? words.nothingOf

// rename opens the name of a document.
export function rename(of: Known): void {
  const open = edits.value[of.id] ?? edit.begin(of.id, of.version, of.name)
  if (!('name' in open.value)) setEdit(of.id, edit.typed(open, 'name', of.name, of.name))
}

export function type(id: number, value: string): void {
  const open = edits.value[id]
  if (open) setEdit(id, edit.typed(open, 'name', open.was.name ?? '', value))
}

// put types a value at a path of a document. It is saved after a while, or by save.
export function put(of: Known, path: string, was: Json, value: Json): void {
  const open = edits.value[of.id] ?? edit.begin(of.id, of.version, of.name)
  if (open.state === 'conflict') return
  setEdit(of.id, edit.typed(open, path, was, value))
  if (doc.value?.id === of.id) void reckonKey()
  saveLater(of.id)
}

function saveLater(id: number): void {
  clearTimeout(timers.get(id))
  timers.set(
    id,
    window.setTimeout(() => void save(id), settled),
  )
}

export function drop(id: number): void {
  setEdit(id, null)
  void reckon()
}

// underway are the saves that are not answered yet, by document. The next one waits for
// it: sent upon the same version it would be in conflict with ourselves.
const underway = new Map<number, Promise<void>>()

// save sends what was typed, with the version it was typed upon.
export async function save(id: number): Promise<void> {
  clearTimeout(timers.get(id))
  while (underway.has(id)) await underway.get(id)
  const open = edits.value[id]
  if (!open || open.state === 'saving' || open.state === 'conflict') return
  if (edit.unchanged(open)) return setEdit(id, null)
  const sent = edit.sending(open)
  setEdit(id, sent)
  const sending = send(sent)
  underway.set(id, sending)
  await sending
}

async function send(sent: edit.Edit): Promise<void> {
  try {
    arrive(sent, await askChange(sent.id, sent.base, await windowId, edit.settings(sent)))
  } finally {
    underway.delete(sent.id)
  }
}

function arrive(sent: edit.Edit, answer: Answer<Saved>): void {
  stand(answer)
  if (answer.is === 'done') settle(sent, answer.value)
  const rest = edit.arrived(sent, edits.value[sent.id], answer)
  setEdit(sent.id, rest)
  if (rest && answer.is === 'done') saveLater(sent.id) // typed since
  if (answer.is === 'conflict') refreshSoon()
}

// settle shows what was saved before the page is read anew.
function settle(sent: edit.Edit, saved: Saved): void {
  const { id } = sent
  past.value = steps.changed(past.value, id, saved.version)
  const name = typeof sent.value.name === 'string' ? sent.value.name : nameOf(id)
  hand.items.value = hand.items.value?.map((w) => (w.id === id ? { ...w, name, version: saved.version } : w)) ?? null
  if (doc.value?.id === id) doc.value = { ...doc.value, name, version: saved.version, plan: edit.laidOver(doc.value.plan, sent.value) }
  said.value = words.savedName(name)
  refreshSoon()
}

export function keepTheirs(id: number): void {
  setEdit(id, null)
  refreshSoon()
}

export async function keepMine(id: number): Promise<void> {
  const open = edits.value[id]
  if (!open) return
  setEdit(id, edit.mine(open))
  await save(id)
}

// act asks for an act on a document that writes a version, and shows what came of it.
export async function act(of: Known, name: string, more: object = {}): Promise<boolean> {
  await save(of.id)
  await strokesDone()
  const base = Math.max(past.value.at[of.id] ?? 0, known(of.id)?.version ?? of.version) // a table knows of its strokes before the document does
  const answer = await askAct(of.id, name, base, await windowId, more)
  if (answer.is === 'conflict') {
    const { head, differences } = answer.conflict
    setEdit(of.id, edit.clash(of.id, of.name, base, head, differences))
    stand(answer)
  } else if (heard(answer)) {
    past.value = steps.changed(past.value, of.id, answer.value.version)
    if (doc.value?.id === of.id) doc.value = { ...doc.value, version: answer.value.version }
  }
  await refresh()
  return answer.is === 'done'
}

// strokesDone waits for strokes that are not answered yet, as long as a server takes that
// answers.
async function strokesDone(): Promise<void> {
  for (let i = 0; strokes.value > 0 && i < 60; i++) await new Promise((done) => setTimeout(done, 50))
}

// step undoes or redoes the last change of this window.
export async function step(way: 'undo' | 'redo'): Promise<void> {
  const own = await windowId // a copy forgets the original's past by then
  const id = way === 'undo' ? steps.lastDone(past.value) : steps.lastUndone(past.value)
  if (id === undefined || stepping.value) return
  await strokesDone()
  if (stepping.value) return // pressed twice meanwhile
  if (edits.value[id] || strokes.value > 0) {
    said.value = words.finishFirst(nameOf(id)) // a step must not take what is being typed
    return
  }
  stepping.value = true
  const base = past.value.at[id] ?? known(id)?.version ?? 0
  const answer = await askAct(id, way, base, own)
  if (answer.is === 'conflict') {
    const { head, differences } = answer.conflict
    setEdit(id, edit.clash(id, nameOf(id), base, head, differences))
    stand(answer)
  } else if (heard(answer)) {
    const { version } = answer.value
    past.value = way === 'undo' ? steps.undone(past.value, version) : steps.redone(past.value, version)
  } else if (answer.is === 'trouble' && answer.status === 404) {
    past.value = steps.without(past.value, id)
  }
  await refresh()
  stepping.value = false
  if (answer.is === 'done') said.value = way === 'undo' ? words.undone(nameOf(id)) : words.redone(nameOf(id))
}

export async function clearDemo(): Promise<void> {
  const answer = await askClearDemo()
  if (!heard(answer)) return
  said.value = words.cleared(answer.value.removed)
  await refresh()
}

// sendKept saves what could not be sent while the server was gone, and what was typed in
// fields before a reload. A name half typed waits for its own Save.
export function sendKept(): void {
  for (const open of Object.values(edits.value)) {
    if (open.state === 'waiting' || (open.state === 'typing' && !('name' in open.value))) void save(open.id)
  }
}
