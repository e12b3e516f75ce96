// Numbers that are typed figure by figure: 1 2 3 4. Of more shafts than nine a figure waits
// for another that goes on with it, until a space or what cannot go on with it parts them.

// Figured is what comes of a figure: numbers that are whole now, and one that waits; 0: none.
export type Figured = { readonly put: readonly number[]; readonly held: number }

// figured takes a figure after one that waits, where numbers go up to most. A 0 by itself
// stands for 10; a number beyond most is nothing.
export function figured(held: number, figure: number, most: number): Figured {
  const joined = held * 10 + figure
  if (held > 0 && joined <= most) return whole(joined, most)
  const before = held > 0 ? [held] : []
  const alone = whole(figure === 0 ? 10 : figure, most)
  return { put: [...before, ...alone.put], held: alone.held }
}

const whole = (n: number, most: number): Figured => (n > most ? { put: [], held: 0 } : n * 10 <= most ? { put: [], held: n } : { put: [n], held: 0 })
