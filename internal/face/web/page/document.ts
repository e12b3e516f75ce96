import { ask } from './ask'
import { act, save } from './deeds'
import { doc } from './doc'
import { heard } from './heard'
import type { Saved } from './kinds'
import type { Doc } from './kinds_doc'
import { go, type Place } from './place'
import { said } from './state'
import { windowId } from './window'
import { words } from './words'

// What is done with documents of every kind.

export type Kind = Doc['kind']

// placeOf is the page of a document.
export const placeOf = (kind: Kind, id: number): Place => (kind === 'warp' ? { page: kind, id, stage: 'piece' } : { page: kind, id })

// listOf is the page where documents of a kind stand.
export const listOf = (kind: Kind): Place => ({ page: kind === 'warp' ? 'bench' : `${kind}s` })

// copy makes a copy of a document, with what is typed at it, and goes on with that.
export async function copy(kind: Kind, id: number): Promise<void> {
  await save(id)
  const answer = await ask<Saved>(`/api/documents/${id}/copy`, { window: await windowId })
  if (heard(answer)) go(placeOf(kind, answer.value.id))
}

// remove takes the open document out of the book.
export async function remove(): Promise<void> {
  const now = doc.value
  if (!now || !(await act(now, 'remove'))) return
  go(listOf(now.kind))
  said.value = words.document_.removed(now.name)
}
