import type { Reckoning, Section } from './kinds_doc'

const nameOf = (section: Section): string => section.id.replace(/\[.*/, '')

// inPlace puts an answer that has only some parts into what is known: the sections of those
// names are as it has them, everything else is as it was. Where there are none of them the
// plan cannot be reckoned, and there are no others either.
export function inPlace(known: Reckoning | null, answer: Reckoning, only: readonly string[]): Reckoning {
  if (!known || only.length === 0) return answer
  const { allowances, orders, yarns, sett, findable, limits } = known
  const rest = answer.sections.length === 0 ? [] : known.sections.filter((section) => !only.includes(nameOf(section)))
  const { draft } = known
  return { ...answer, sections: [...answer.sections, ...rest], allowances, orders, yarns, sett, findable, limits, ...(draft ? { draft } : {}) }
}
