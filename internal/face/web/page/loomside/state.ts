import { signal } from '@preact/signals'
import { ask } from '../ask'
import { heard } from '../heard'

// loom is the warp beside the loom as the book has it.
export const loom = signal<{ id: number; name: string } | null>(null)

export async function readLoom(id: number): Promise<boolean> {
  const answer = await ask<{ id: number; name: string }>(`/api/documents/${id}/loomside`)
  if (!heard(answer)) return false
  loom.value = answer.value
  return true
}
