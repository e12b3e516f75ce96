// Figures come worded from the server as plain text. Here they are set: fractions as
// fractions, long numbers in threes with thin spaces, a number kept beside its unit.

export type Part = { text: string } | { over: string; under: string }

const fraction = /(\d+)\/(\d+)(?![\d/]| twill)/g

// thin space and no-break space
const thin = '\u2009'
const fixed = '\u00a0'

// inThrees parts a long whole number: four digits stand as they are.
const inThrees = (digits: string): string => (digits.length < 5 ? digits : digits.replace(/\B(?=(\d{3})+$)/g, thin))

// spaced sets the plain stretches of a figure.
function spaced(text: string): string {
  return text
    .replace(/(?<![\d.#a-z])\d{5,}(?![\d.]*[a-z#])/g, inThrees)
    .replace(/(\d) (?=[a-z%°])/gi, `$1${fixed}`)
    .replace(/(^|\s|\()-(?=\d)/g, '$1\u2212')
}

// isFraction tells a fraction from counts such as 8/2 Ne, 22/2, and densities as 60/10 cm:
// a fraction is proper, and of a ruler.
const rulers = new Set(['2', '4', '8', '16', '32'])
const isFraction = (over: string, under: string): boolean => rulers.has(under) && Number(over) < Number(under) && Number(over) > 0

// partsOf is a text with its fractions taken out.
export function partsOf(text: string): Part[] {
  const parts: Part[] = []
  let from = 0
  for (const found of text.matchAll(fraction)) {
    const [whole, over = '', under = ''] = found
    if (!isFraction(over, under)) continue
    const before = text.slice(from, found.index).replace(/(\d) $/, `$1${fixed}`)
    if (before) parts.push({ text: spaced(before) })
    parts.push({ over, under })
    from = found.index + whole.length
  }
  const rest = text.slice(from)
  if (rest) parts.push({ text: from > 0 ? spaced(rest).replace(/^ (?=[a-z])/i, fixed) : spaced(rest) })
  return parts
}

const digits = (text: string, set: string): string => text.replace(/\d/g, (d) => set[Number(d)] ?? d)

// raised is a fraction as the type has it: raised figures, a slash, lowered figures.
export const raised = ({ over, under }: { over: string; under: string }): string =>
  `${digits(over, '⁰¹²³⁴⁵⁶⁷⁸⁹')}⁄${digits(under, '₀₁₂₃₄₅₆₇₈₉')}`
