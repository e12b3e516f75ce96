import { signal } from '@preact/signals'
import { ask } from '../ask'
import { heard } from '../heard'
import type { Card, Problem, Saved } from '../kinds'
import { lotsOf } from '../lots'
import { go } from '../place'
import { refresh } from '../refresh'
import { said } from '../state'
import { windowId } from '../window'
import { words } from '../words'
import { textOfFile } from './text'

// drafts are those of the shelf.
export const drafts = lotsOf<Card>('drafts')

// Came is what became of a file that was brought in.
export type Came = { file: string; id: number; name: string; problems: Problem[] }

export const came = signal<Came[]>([])
export const bringing = signal(false)

// most is how many bytes a file may have: the server takes no more.
const most = 10_000_000

// bring reads files one after another. One that is whole leads to its draft; of several,
// and of one with problems, a report stays.
export async function bring(files: readonly File[]): Promise<void> {
  if (files.length === 0 || bringing.value) return
  bringing.value = true
  const all: Came[] = []
  for (const file of files) {
    const one = await bringOne(file)
    if (one) all.push(one)
  }
  bringing.value = false
  came.value = all
  await refresh()
  const [only] = all
  if (all.length !== 1 || !only || only.id === 0 || only.problems.length > 0) return
  came.value = []
  go({ page: 'draft', id: only.id })
  said.value = words.draft.cameInAs(only.file, only.name)
}

// bringOne gives nothing where the server did not answer as agreed: that is said above.
async function bringOne(file: File): Promise<Came | null> {
  const refused = (problems: Problem[]): Came => ({ file: file.name, id: 0, name: '', problems })
  if (file.size > most) return refused([{ code: 'size', severity: 'error', path: '', says: words.draft.tooBig }])
  const text = textOfFile(await file.arrayBuffer())
  const answer = await ask<Saved>('/api/drafts', { window: await windowId, name: file.name, text })
  if (answer.is === 'problems') return refused(answer.problems)
  if (!heard(answer)) return null
  const { id, problems } = answer.value
  const about = await ask<Card>(`/api/documents/${id}`)
  return { file: file.name, id, name: about.is === 'done' ? about.value.name : file.name, problems }
}
