import { signal } from '@preact/signals'
import { ask } from '../ask'
import { heard } from '../heard'
import type { Card, Saved } from '../kinds'
import { go, type Place } from '../place'
import { refresh } from '../refresh'
import { said } from '../state'
import { windowId } from '../window'
import { words } from '../words'
import { alone, type Fate } from './fate'
import { mostBytes, sorted, type Taken, type WarpFile } from './files'
import { textOfFile } from './text'

// Into is where files go: each where it belongs, or all to the drafts.
export type Into = 'book' | 'drafts'

// fates are what became of the files that were taken in last.
export const fates = signal<Fate[]>([])
export const taking = signal(false)

// take takes files into the book, one after another. One that is clean is opened; of
// several, and of one with problems, a report stays.
export async function take(list: Iterable<File>, into: Into): Promise<void> {
  const files = [...list]
  if (files.length === 0 || taking.value) return
  taking.value = true
  const all = await takeAll(files, into)
  taking.value = false
  await show(all)
}

async function takeAll(files: File[], into: Into): Promise<Fate[]> {
  const all: Fate[] = []
  const read: Taken[] = []
  for (const file of files) {
    const text = await textOf(file)
    if (typeof text === 'string') read.push({ name: file.name, text })
    else all.push(text)
  }
  const { warps, drafts, beside } = sorted(read)
  for (const file of warps) all.push(...(await (into === 'book' ? addWarp(file) : addDraft(file))))
  for (const file of drafts) all.push(...(await addDraft(file)))
  return [...all, ...beside.map(({ name, of }): Fate => ({ is: 'beside', file: name, of, problems: [] }))]
}

// textOf is the text of a file, or why there is none: a folder can be dropped too.
async function textOf(file: File): Promise<string | Fate> {
  if (file.size > mostBytes) return { is: 'large', file: file.name, problems: [] }
  try {
    return textOfFile(await file.arrayBuffer())
  } catch {
    return { is: 'unread', file: file.name, problems: [] }
  }
}

const addWarp = (file: WarpFile): Promise<Fate[]> => add('/api/warps', file, (id) => ({ page: 'warp', id, stage: 'piece' }))

const addDraft = (file: Taken | WarpFile): Promise<Fate[]> => add('/api/drafts', file, (id) => ({ page: 'draft', id }))

// add gives nothing where the server did not answer as agreed: that is said above.
async function add(route: string, file: Taken | WarpFile, placeOf: (id: number) => Place): Promise<Fate[]> {
  const answer = await ask<Saved>(route, { window: await windowId, ...file })
  if (answer.is === 'problems') return [{ is: 'refused', file: file.name, problems: answer.problems }]
  if (!heard(answer)) return []
  const { id, problems } = answer.value
  const about = await ask<Card>(`/api/documents/${id}`)
  return [{ is: 'added', file: file.name, name: about.is === 'done' ? about.value.name : file.name, place: placeOf(id), problems }]
}

async function show(all: Fate[]): Promise<void> {
  const one = alone(all)
  fates.value = one ? [] : all
  if (!one) return void (await refresh())
  go(one.place)
  said.value = words.taking.addedAs(one.file, one.name)
}
