// seeded gives numbers from 0 to below 1 that are the same for a seed on every machine: a
// linear congruence of 32 bits with the factors of Numerical Recipes (Press et al., 2nd
// edition, section 7.1).
export function seeded(seed: number): () => number {
  let state = seed >>> 0
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0
    return state / 2 ** 32
  }
}

// below gives whole numbers from 0 to below n.
export const below = (random: () => number, n: number): number => Math.floor(random() * n)

export const oneOf = <V>(random: () => number, all: readonly V[]): V => all[below(random, all.length)] as V
