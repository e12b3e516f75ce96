import type { Setting } from '../kinds'

// LoomForm is what a new loom is told by; the rest is said on its page.
export type LoomForm = { name: string; width: string; shafts: string; treadles: string; shed: string }

export const emptyLoom: LoomForm = { name: '', width: '', shafts: '', treadles: '', shed: '' }

// bare is a whole number as such, other text as it stands: the book says what is wrong.
const bare = (text: string): string | number => (/^\s*\d{1,4}\s*$/.test(text) ? Number(text) : text.trim())

// loomSets are the values that a form says; what is empty is left out.
export function loomSets(form: LoomForm): Setting[] {
  const all: [string, string | number][] = [
    ['shafts', bare(form.shafts)],
    ['treadles', bare(form.treadles)],
    ['shed', form.shed],
    ['width', form.width.trim()],
  ]
  return all.filter(([, value]) => value !== '').map(([path, value]) => ({ path, value }))
}
