// Sets of shafts, or of treadles, numbered from 1 to 64: a number of 32 bits for the lower
// half and one for the upper, both without sign. The numbers of the page hold 53 bits.
export type NumberSet = { readonly lo: number; readonly hi: number }

// mostNumbers is how many shafts, or treadles, there may be.
export const mostNumbers = 64

export const noNumbers: NumberSet = { lo: 0, hi: 0 }

const isNumber = (n: number): boolean => Number.isInteger(n) && n >= 1 && n <= mostNumbers

// bitOf is the set of one number; of one that is out of range, none.
const bitOf = (n: number): NumberSet => {
  if (!isNumber(n)) return noNumbers
  return n <= 32 ? { lo: (1 << (n - 1)) >>> 0, hi: 0 } : { lo: 0, hi: (1 << (n - 33)) >>> 0 }
}

// setOf gives the set of those numbers.
export const setOf = (...numbers: number[]): NumberSet => numbers.reduce(withNumber, noNumbers)

// upTo gives the set of 1 to n.
export function upTo(n: number): NumberSet {
  const low = (count: number): number => (count >= 32 ? 0xffffffff : count < 1 ? 0 : 2 ** count - 1)
  return { lo: low(n), hi: low(n - 32) }
}

// parseSet reads a set as the server writes it: hexadecimal, bit n-1 for the nth number.
// It is null where the text is no set.
export function parseSet(text: string): NumberSet | null {
  if (!/^[0-9a-f]{1,16}$/.test(text)) return null
  return { lo: parseInt(text.slice(-8), 16), hi: parseInt(text.slice(0, -8) || '0', 16) }
}

// setText writes it in the same way, without zeros in front.
export const setText = ({ lo, hi }: NumberSet): string => (hi === 0 ? lo.toString(16) : hi.toString(16) + lo.toString(16).padStart(8, '0'))

// hasBit reports whether a number is in the set of those halves; 0 is in none. It is what
// every crossing of a cloth asks, and makes no object.
export const hasBit = (lo: number, hi: number, n: number): boolean => (n < 1 || n > mostNumbers ? false : n <= 32 ? ((lo >>> (n - 1)) & 1) === 1 : ((hi >>> (n - 33)) & 1) === 1)

export const has = (set: NumberSet, n: number): boolean => hasBit(set.lo, set.hi, n)

export const union = (a: NumberSet, b: NumberSet): NumberSet => ({ lo: (a.lo | b.lo) >>> 0, hi: (a.hi | b.hi) >>> 0 })

export const intersection = (a: NumberSet, b: NumberSet): NumberSet => ({ lo: (a.lo & b.lo) >>> 0, hi: (a.hi & b.hi) >>> 0 })

// less gives what of a is not in b.
export const less = (a: NumberSet, b: NumberSet): NumberSet => ({ lo: (a.lo & ~b.lo) >>> 0, hi: (a.hi & ~b.hi) >>> 0 })

// complement gives the numbers of 1 to n that are not in the set.
export const complement = (set: NumberSet, n: number): NumberSet => less(upTo(n), set)

export function withNumber(set: NumberSet, n: number): NumberSet {
  return union(set, bitOf(n))
}

export const without = (set: NumberSet, n: number): NumberSet => less(set, bitOf(n))

export const same = (a: NumberSet, b: NumberSet): boolean => a.lo === b.lo && a.hi === b.hi

export const isEmpty = (set: NumberSet): boolean => set.lo === 0 && set.hi === 0

// numbersOf lists a set from its lowest number.
export function numbersOf(set: NumberSet): number[] {
  const out: number[] = []
  for (let n = 1; n <= mostNumbers; n++) if (has(set, n)) out.push(n)
  return out
}

// Sets are many of them, as two rows of halves.
export type Sets = { readonly lo: Uint32Array; readonly hi: Uint32Array }

export const emptySets = (n: number): Sets => ({ lo: new Uint32Array(n), hi: new Uint32Array(n) })

export const setAt = (sets: Sets, i: number): NumberSet => ({ lo: sets.lo[i] ?? 0, hi: sets.hi[i] ?? 0 })

export function putSet(sets: Sets, i: number, set: NumberSet): void {
  sets.lo[i] = set.lo
  sets.hi[i] = set.hi
}

// readSets reads a list of them; null where one is no set.
export function readSets(texts: readonly string[]): Sets | null {
  const sets = emptySets(texts.length)
  for (const [i, text] of texts.entries()) {
    const set = parseSet(text)
    if (!set) return null
    putSet(sets, i, set)
  }
  return sets
}
