import { signal } from '@preact/signals'
import { askLot, askOrigins } from '../ask'
import { doc } from '../doc'
import type { Card } from '../kinds'
import type { Origin } from '../kinds_doc'

// What the shelves hold that a warp may take, and where its parts came from.

export const shelfYarns = signal<Card[]>([])
export const shelfLooms = signal<Card[]>([])
export const shelfDrafts = signal<Card[]>([])
export const origins = signal<Origin[]>([])

// most is how many are offered to choose from at once.
const most = '200'

export async function readShelves(): Promise<void> {
  const now = doc.value
  if (!now || now.kind !== 'warp') return
  const ask = (list: string) => askLot<Card>(list, { most })
  const [yarns, looms, drafts, from] = await Promise.all([ask('yarns'), ask('looms'), ask('drafts'), askOrigins(now.id)])
  if (yarns.is === 'done') shelfYarns.value = yarns.value.items
  if (looms.is === 'done') shelfLooms.value = looms.value.items
  if (drafts.is === 'done') shelfDrafts.value = drafts.value.items
  if (from.is === 'done') origins.value = from.value
}

// readOrigins reads where the parts of the open warp came from.
export async function readOrigins(): Promise<void> {
  const now = doc.value
  if (!now || now.kind !== 'warp') return
  const from = await askOrigins(now.id)
  if (from.is === 'done' && doc.value?.id === now.id) origins.value = from.value
}
