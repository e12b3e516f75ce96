import type { TermName } from './guide/prose'

// The words of the trade that fields ask for and figures speak of, so that each can say
// what it means.

const fields: Readonly<Record<string, TermName>> = {
  'warp.sett': 'sett', 'warp.reed': 'reed', 'warp.sleying': 'sleying-order', 'warp.threading': 'threading',
  'warp.floating-selvedges': 'floating-selvedge', 'warp.doubled-edges': 'doubled-edge',
  'draft.treadling': 'treadling', 'draft.lift-plan': 'lift-plan',
  'weft.picks': 'ppi', 'weft.slack': 'slack', 'weft.reserve': 'reserve', 'weft.tail': 'tail', 'weft.hemstitch': 'hemstitching', 'weft.bobbin': 'bobbin',
  header: 'header', 'sampling.length': 'sample', motif: 'motif', border: 'border',
  'winding.board': 'warping-board', 'winding.mill': 'warping-mill', 'winding.bout': 'bout', 'winding.tie': 'counting-tie', 'winding.raddle': 'raddle', 'winding.section': 'section', 'winding.beam-girth': 'beam',
  shafts: 'shaft', treadles: 'treadle', shed: 'shed', heddles: 'heddle', waste: 'loom-waste', 'beam-holds': 'beam',
  count: 'count', wraps: 'wraps', 'put-up': 'put-up',
}

const losses: Readonly<Record<string, TermName>> = {
  shrinkage: 'shrinkage', relaxation: 'relaxation', 'take-up': 'take-up', 'loom-take-up': 'take-up', 'tape-to-washed': 'on-the-loom', 'warp-to-washed': 'wet-finishing',
  'width-shrinkage': 'shrinkage', 'width-relaxation': 'relaxation', 'draw-in': 'draw-in', 'reed-to-relaxed': 'draw-in', 'reed-to-washed': 'in-the-reed', 'fell-to-washed': 'fell',
}

const sections: Readonly<Record<string, TermName>> = { raddle: 'raddle', sectional: 'section', reed: 'reed', heddles: 'heddle', weft: 'weft', winding: 'bout' }

// termAt is the word of a field, by the path of what it sets, in a warp or on a shelf. The
// number of pieces of a kind is no count of yarn.
export function termAt(path: string): TermName | undefined {
  if (/^pieces\[\d+\]\.count$/.test(path)) return undefined
  return fields[path] ?? fields[path.replace(/^(loom|pieces\[\d+\]|yarns\.("([^"\\]|\\.)*"|[^.[]+))\./, '')]
}

export const termOfLoss = (key: string): TermName | undefined => losses[key]

export const termOfSection = (id: string): TermName | undefined => sections[id]
