// A peg of a warping board, as the plan file has it: a name of one word, how far to the
// right, how far down, as "cross-1 30 cm, 0 cm".
export type Peg = { name: string; right: string; down: string }

// pegOf takes a peg apart, also one that is half typed.
export function pegOf(text: string): Peg {
  const [, name = '', rest = ''] = /^(\S*)\s?(.*)$/s.exec(text) ?? []
  const cut = rest.indexOf(', ')
  return cut < 0 ? { name, right: rest, down: '' } : { name, right: rest.slice(0, cut), down: rest.slice(cut + 2) }
}

// pegText writes it.
export const pegText = ({ name, right, down }: Peg): string => `${name.replace(/\s+/g, '-')} ${right}, ${down}`

// firstBoard is a small board to begin with: the start, the cross and the far end.
export const firstBoard = ['start 0 cm, 0 cm', 'cross-1 30 cm, 0 cm', 'cross-2 60 cm, 0 cm', 'end 1 m, 0 cm']

// nextPeg is a peg to be added: it has a name that no other has.
export function nextPeg(pegs: readonly string[]): string {
  const taken = new Set(pegs.map((text) => pegOf(text).name))
  for (let n = pegs.length + 1; ; n++) {
    if (!taken.has(`peg-${n}`)) return `peg-${n} 0 cm, 30 cm`
  }
}
