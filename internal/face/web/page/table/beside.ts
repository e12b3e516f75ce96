import { signal } from '@preact/signals'
import { askLot, askOrigins } from '../ask'
import type { Kind } from '../document'
import type { Card } from '../kinds'
import { origins } from '../warp/shelf'

// What stands beside the table: the looms that a draft of the shelf may be for, and where the
// draft of a warp came from.

export const looms = signal<Card[]>([])

// calm is how long strokes are left alone before it is asked where a draft came from, in ms.
const calm = 600

// readBeside reads it soon; what it returns calls that off.
export function readBeside(of: Kind, id: number): () => void {
  const timer = setTimeout(() => void (of === 'warp' ? readOrigins(id) : readLooms()), looms.value.length > 0 || of === 'warp' ? calm : 0)
  return () => clearTimeout(timer)
}

async function readOrigins(id: number): Promise<void> {
  const from = await askOrigins(id)
  if (from.is === 'done') origins.value = from.value
}

async function readLooms(): Promise<void> {
  if (looms.value.length > 0) return
  const all = await askLot<Card>('looms', { most: '200' })
  if (all.is === 'done') looms.value = all.value.items
}
