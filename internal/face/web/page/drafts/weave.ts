// What the catalogue says of a weave.

export type Param = {
  name: string
  says: string
  means?: string
  kind: 'count' | 'choice' | 'ratio' | 'units' | 'threads'
  default: string
  least?: number
  most?: number
  even?: boolean
  options?: { value: string; says: string }[]
}

export type Weave = {
  id: string
  family: string
  family_says: string
  name: string
  says: string
  use?: string
  source: string
  shafts: number
  treadles: number
  ends: number
  picks: number
  float: number
  params: Param[]
}

// fits tells whether a weave is among those that are sought.
export function fits(weave: Weave, text: string, shafts: string): boolean {
  const said = `${weave.name} ${weave.says} ${weave.use ?? ''} ${weave.family_says}`.toLowerCase()
  const all = text.toLowerCase().split(/\s+/)
  return all.every((word) => said.includes(word)) && (shafts === '' || weave.shafts <= Number(shafts))
}
