import { signal } from '@preact/signals'
import { ask } from '../ask'
import { doc } from '../doc'
import type { Figure } from '../kinds'
import type { Learnt } from '../kinds_doc'

export type Size = { path: string; says: string; states: { state: string; says: string; planned?: string; measured?: string; event?: string }[] }
export type Record_ = { sizes: Size[]; learnt: Learnt[]; yarn: Figure[] }

// record is what was measured and written down of the open warp.
export const record = signal<Record_ | null>(null)

export async function readRecord(): Promise<void> {
  const now = doc.value
  if (!now) return
  const answer = await ask<Record_>(`/api/documents/${now.id}/record`)
  if (answer.is === 'done' && doc.value?.id === now.id) record.value = answer.value
}
