import { askChange, askClearDemo, askStep } from './ask'
import * as edit from './edit'
import type { Saved, Warp } from './kinds'
import { heard, read, readSoon, stand } from './list'
import * as steps from './past'
import { edits, past, said, setEdit, stepping, warps } from './state'
import { windowId } from './window'
import { words } from './words'

export const warpOf = (id: number): Warp | undefined => warps.value?.find((w) => w.id === id)

const nameOf = (id: number): string => warpOf(id)?.name ?? words.nothingOf

export function rename(warp: Warp): void {
  if (!edits.value[warp.id]) setEdit(warp.id, edit.begin(warp.id, warp.version, warp.name))
}

export function type(id: number, value: string): void {
  const open = edits.value[id]
  if (open) setEdit(id, edit.typed(open, value))
}

export const drop = (id: number): void => setEdit(id, null)

// save sends what was typed, with the version it was typed upon.
export async function save(id: number): Promise<void> {
  const open = edits.value[id]
  if (!open || open.state === 'saving') return
  if (edit.unchanged(open)) return drop(id)
  const sent = edit.sending(open)
  setEdit(id, sent)
  const answer = await askChange(id, sent.base, await windowId, edit.settings(sent))
  stand(answer)
  setEdit(id, edit.arrived(sent, edits.value[id], answer))
  if (answer.is === 'done') settle(id, sent.value, answer.value)
  if (answer.is === 'conflict') readSoon()
}

// settle shows what was saved before the list is read anew.
function settle(id: number, name: string, saved: Saved): void {
  past.value = steps.changed(past.value, id, saved.version)
  warps.value = warps.value?.map((w) => (w.id === id ? { ...w, name, version: saved.version } : w)) ?? null
  said.value = words.savedName(name)
  readSoon()
}

export function keepTheirs(id: number): void {
  setEdit(id, null)
  readSoon()
}

export async function keepMine(id: number): Promise<void> {
  const open = edits.value[id]
  if (!open) return
  setEdit(id, edit.mine(open))
  await save(id)
}

// step undoes or redoes the last change of this window.
export async function step(way: 'undo' | 'redo'): Promise<void> {
  const own = await windowId // a copy forgets the original's past by then
  const id = way === 'undo' ? steps.lastDone(past.value) : steps.lastUndone(past.value)
  if (id === undefined || stepping.value) return
  if (edits.value[id]) {
    said.value = words.finishFirst(nameOf(id)) // a step must not take what is being typed
    return
  }
  stepping.value = true
  const base = past.value.at[id] ?? warpOf(id)?.version ?? 0
  const answer = await askStep(id, base, own, way)
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
  await read()
  stepping.value = false
  if (answer.is === 'done') said.value = way === 'undo' ? words.undone(nameOf(id)) : words.redone(nameOf(id))
}

export async function clearDemo(): Promise<void> {
  const answer = await askClearDemo()
  if (!heard(answer)) return
  said.value = words.cleared(answer.value.removed)
  await read()
}

// sendWaiting saves what could not be sent while the server was gone.
export function sendWaiting(): void {
  for (const open of Object.values(edits.value)) {
    if (open.state === 'waiting') void save(open.id)
  }
}
