import { signal } from '@preact/signals'
import { ask } from '../ask'
import { heard } from '../heard'

// Held is a warp in hand, and nothing of it but what the list says.
export type Held = { id: number; name: string; stage: string; next?: string; progress?: { done: number; of: number } }

export type Hand = { device: string; warps: Held[] }

export const hand = signal<Hand | null>(null)

// readHand reads what this device is called and which warps it may show.
export async function readHand(): Promise<boolean> {
  const answer = await ask<Hand>('/api/hand')
  if (!heard(answer)) return false
  hand.value = answer.value
  return true
}

// pair lets this device in by a code; what is wrong is said.
export async function pair(code: string, name: string): Promise<string> {
  const answer = await ask<{ id: string }>('/api/pair', { code, name })
  switch (answer.is) {
    case 'done':
      return ''
    case 'problems':
      return answer.problems.map((one) => one.says + (one.fix ? `: ${one.fix}` : '')).join('. ')
    case 'trouble':
      return `${answer.trouble.says}: ${answer.trouble.fix ?? ''}`
    default:
      heard(answer)
      return ''
  }
}
