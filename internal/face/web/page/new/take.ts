import { signal } from '@preact/signals'
import { ask } from '../ask'
import { heard } from '../heard'
import type { Problem, Saved } from '../kinds'
import { go, type Place } from '../place'
import { refresh } from '../refresh'
import { windowId } from '../window'
import { mostBytes, sorted, type Taken, type WarpFile } from './files'

// What came of the files that were taken in last: what was added, and what is wrong with
// those that were not.
export type Outcome = { added: { name: string; place: Place }[]; bad: { name: string; problems: Problem[] }[]; large: string[] }

export const outcome = signal<Outcome | null>(null)
export const taking = signal(false)

// take takes files into the book. A single one is opened.
export async function take(list: Iterable<File>): Promise<void> {
  const files = [...list]
  if (files.length === 0 || taking.value) return
  taking.value = true
  const small = files.filter((file) => file.size <= mostBytes)
  const came: Outcome = { added: [], bad: [], large: files.filter((file) => file.size > mostBytes).map((file) => file.name) }
  const { warps, drafts } = sorted(await Promise.all(small.map(read)))
  for (const warp of warps) await addWarp(warp, came)
  for (const draft of drafts) await addDraft(draft, came)
  taking.value = false
  show(came)
}

const read = async (file: File): Promise<Taken> => ({ name: file.name, text: await file.text() })

async function addWarp({ name, text, beside }: WarpFile, came: Outcome): Promise<void> {
  await add('/api/warps', { name, text, beside }, came, (id) => ({ page: 'warp', id, stage: 'piece' }))
}

async function addDraft({ name, text }: Taken, came: Outcome): Promise<void> {
  await add('/api/drafts', { name, text }, came, (id) => ({ page: 'draft', id }))
}

async function add(route: string, file: Taken | WarpFile, came: Outcome, placeOf: (id: number) => Place): Promise<void> {
  const answer = await ask<Saved>(route, { window: await windowId, ...file })
  if (answer.is === 'problems') came.bad.push({ name: file.name, problems: answer.problems })
  else if (heard(answer)) came.added.push({ name: file.name, place: placeOf(answer.value.id) })
}

function show(came: Outcome): void {
  const [first, ...others] = came.added
  const alone = first && others.length + came.bad.length + came.large.length === 0
  outcome.value = alone || came.added.length + came.bad.length + came.large.length === 0 ? null : came
  if (alone) go(first.place)
  else void refresh()
}
