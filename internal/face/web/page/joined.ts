// joined leaves out what is shown already: a row may move between two questions.
export function joined<T extends { id: number }>(shown: T[], lot: T[]): T[] {
  const known = new Set(shown.map((row) => row.id))
  return [...shown, ...lot.filter((row) => !known.has(row.id))]
}
