import { signal } from '@preact/signals'
import { ask } from '../ask'
import { doc } from '../doc'

// Advised is an allowance that the weaver has measured: of a sample of this yarn, or of
// a warp that is finished.
export type Advised = { key: string; says: string; typed: string; value: string }

export const advice = signal<Advised[]>([])

let asked = ''

// readAdvice reads what the weaver's samples and records say for the open warp.
export async function readAdvice(): Promise<void> {
  const now = doc.value
  const of = now ? `${now.id} ${now.version}` : ''
  if (!now || of === asked) return
  asked = of
  const answer = await ask<Advised[]>(`/api/documents/${now.id}/samples`)
  if (answer.is === 'done') advice.value = answer.value
}
