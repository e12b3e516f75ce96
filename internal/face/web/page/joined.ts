import type { Warp } from './kinds'

// joined leaves out what is shown already: a warp may move between two questions.
export function joined(shown: Warp[], lot: Warp[]): Warp[] {
  const known = new Set(shown.map((w) => w.id))
  return [...shown, ...lot.filter((w) => !known.has(w.id))]
}
