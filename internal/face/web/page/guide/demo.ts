import { signal } from '@preact/signals'
import { askWarps } from '../ask'
import { heard } from '../heard'
import { words } from '../words'
import type { DemoName } from './prose'

// Shown is a warp of the demo that is in the book.
type Shown = { id: number; version: number }

// demos are those that the guide has asked for; without one its pictures are left out.
export const demos = signal<Partial<Record<DemoName, Shown>>>({})

// readDemos looks for warps of the demo by their names. One that was cleared or renamed
// is not found.
export async function readDemos(names: readonly DemoName[]): Promise<boolean> {
  const found: Partial<Record<DemoName, Shown>> = {}
  for (const one of names) {
    const answer = await askWarps({ words: words.guide.demo[one] })
    if (!heard(answer)) return false
    const warp = answer.value.items.find((w) => w.demo && w.name === words.guide.demo[one])
    if (warp) found[one] = { id: warp.id, version: warp.version }
  }
  demos.value = found
  return true
}
