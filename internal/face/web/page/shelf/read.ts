import { signal } from '@preact/signals'
import { ask } from '../ask'
import { doc, readDoc } from '../doc'
import { heard } from '../heard'
import type { Card } from '../kinds'
import { lotsOf } from '../lots'
import type { Sample, Shelved, StockEvent } from './kinds'

// yarns are those of the shelf, with what of them is promised; looms all there are.
export const yarns = lotsOf<Shelved>('shelf')
export const looms = lotsOf<Card>('looms')

// What is known of the yarn that is open, beside the document itself.
export const shelved = signal<Shelved | null>(null)
export const events = signal<StockEvent[]>([])
export const samples = signal<Sample[]>([])

// readYarn reads a yarn of the shelf for its page.
export async function readYarn(id: number): Promise<boolean> {
  if (shelved.value?.id !== id) forget()
  if (!(await readDoc(id))) return false
  if (doc.value?.id !== id || doc.value.kind !== 'yarn') return true
  const at = `/api/documents/${id}`
  const [all, happened, woven] = await Promise.all([ask<Shelved>(`${at}/promised`), ask<StockEvent[]>(`${at}/events?topic=stock`), ask<Sample[]>(`${at}/samples`)])
  if (doc.value?.id !== id) return true
  if (!heard(all) || !heard(happened) || !heard(woven)) return false
  shelved.value = all.value
  events.value = happened.value
  samples.value = woven.value
  return true
}

function forget(): void {
  shelved.value = null
  events.value = []
  samples.value = []
}
