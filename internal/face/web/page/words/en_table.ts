import { picksOf, type Table } from '../table/cloth'
import type { Cell } from '../table/cursor'
import { counted } from './counted'
import { dyeNamed, letterOf } from './dyes'

// numbers are shafts or treadles one after the other.
const numbers = (of: readonly number[]): string => (of.length === 0 ? 'none' : of.join(' and '))

const summary = (of: Table): string => {
  const threads = `${counted(of.threading.length, 'end', 'ends')}, ${counted(picksOf(of), 'pick', 'picks')}, ${counted(of.shafts, 'shaft', 'shafts')}`
  return of.treadles > 0 ? `${threads}, ${counted(of.treadles, 'treadle', 'treadles')}` : `${threads}, a lift plan`
}

// The words of the table on which a draft is drawn.
export const table = {
  title: 'Draft',
  roleSays: 'draft to draw on',
  back: { draft: 'Back to the draft', warp: 'Back to the cloth of this warp' },
  open: 'Draw on it',
  openWarp: 'Draw on this draft',
  tableOf: (name: string) => `Draft of ${name}`,
  summary,
  written: 'As written',
  whole: 'The whole warp',
  writtenSays: 'What fills is drawn once, and goes on filling. A broken line is around it.',
  wholeSays: 'Every end of the warp, and every pick of its first piece. What you draw here is written out.',
  fixed: {
    started: 'Work on this warp began: its draft stands as it was threaded. What is on the loom otherwise is amended.',
    whole: 'This draft is a text of its own: draw on it as it is written.',
  } as Record<string, string>,
  stale: 'Somebody changed this draft meanwhile, and it is shown as it is now. Your last stroke was not made: draw it again if it is still wanted.',
  waiting: (n: number) => `${n} strokes are being written down.`,
  held: (n: number) => `${n} and another figure, or a space to put ${n}`,
  keys: 'Arrows go from cell to cell, with Shift they choose. Enter marks a cell, figures (1 2 3 4) put a shaft or a treadle and go on, P goes to the next part, Insert puts one more before, Delete takes a chosen stretch away, + and − zoom.',

  tools: 'What the hand holds',
  hold: { draw: 'Draw', choose: 'Choose', move: 'Move' },
  ways: { line: 'Lines', toggle: 'Single cells' },
  waySays: { line: 'Each thread gets one shaft, or one treadle', toggle: 'Cells are set beside those that are there' },
  smaller: 'Smaller cells',
  larger: 'Larger cells',
  fit: 'All of it',
  colours: 'Colours',
  uncoloured: 'Its threads have the colours of their yarns: draw those on the whole warp.',
  dyeSays: (i: number, hex: string) => `${letterOf(i)}: ${dyeNamed(hex)} ${hex}`,
  chooseSays: 'Choose a stretch of ends, picks or treadles, and what can be done to it stands here.',
  stretch: (part: string, from: number, to: number) => {
    const one = part === 'ties' ? 'treadle' : part === 'threading' || part === 'warp-colours' || part === 'drawdown' ? 'end' : 'pick'
    return to === from + 1 ? `${one[0]?.toUpperCase()}${one.slice(1)} ${to}` : `${one[0]?.toUpperCase()}${one.slice(1)}s ${from + 1} to ${to}`
  },
  reverse: 'Reverse',
  mirror: 'Mirror',
  repeat: 'Repeat it',
  times: 'Times in all',
  insert: 'One more before',
  shiftUp: 'One further up',
  shiftDown: 'One further down',
  rotate: 'Move round',
  copy: 'Copy',
  paste: 'Put what was copied',
  remove: 'Take away',
  type: 'Type it instead',
  typeHint: {
    threading: 'shafts, as 1-4 3 2, or (1 2 3 4) x 3',
    treadling: 'treadles, as 1 2 1+3',
    lifts: 'shafts that are up, as 1+2 2+3',
    ties: 'shafts of each treadle, as 1+2 2+3',
    'warp-colours': 'names and counts, as blue 12, white 4, or (blue 1, white 1) x fill',
    'weft-colours': 'names and counts, as blue 12, white 4, or (blue 1, white 1) x fill',
  } as Record<string, string>,
  lettersHint: 'colours and counts, as A 12, B 4, or (A 1, B 1) x fill',
  put: 'Put it there',
  rule: 'By rule:',
  ruleMore: 'On which, and how far on',
  ruled: {
    first: (shafts: boolean) => (shafts ? 'From shaft' : 'From treadle'),
    last: (shafts: boolean) => (shafts ? 'To shaft' : 'To treadle'),
    start: () => 'Beginning with',
    by: () => 'Each on by',
    run: () => 'Runs of',
  },
  ruledUsual: { first: '1', last: 'the last', start: 'the first', by: '1', run: '4' },
  rules: { straight: 'Straight', point: 'Point', advancing: 'Advancing' },
  addEnd: 'An end more',
  addPick: 'A pick more',
  addShaft: 'A shaft more',
  addTreadle: 'A treadle more',
  toLifts: 'Make a lift plan of it',
  toTreadles: 'Give each lift a treadle',

  goTo: 'Go to number',
  goEnd: 'End',
  goPick: 'Pick',
  wholeDraft: 'Change the whole draft, or begin from a weave',
  change: 'Change it',
  changeWhat: 'Make of it',
  how: 'How',
  lookAt: 'See how it would be',
  asItIs: 'See it as it is',
  make: 'Make it so',
  begin: 'Begin from the catalogue',
  beginSays: 'The weave takes the place of the whole draft. Undo brings that back.',
  beginStretch: (from: number, to: number) => `Its threading takes the place of ends ${from + 1} to ${to}.`,
  weave: 'Weave',
  blocks: 'Write a profile out in blocks',
  blocksSays: 'Letters are blocks, A the first: sley writes each out into the ends that the weave needs. In a chosen stretch of the threading only its ends are put.',
  system: 'Woven as',
  feet: 'Lifts',
  feetChoices: [
    ['one', 'a treadle for each'],
    ['two', 'by both feet'],
    ['none', 'a lift plan'],
  ] as const,
  blocksAcross: 'Blocks across the warp',
  blocksAlong: 'Blocks along the weft',
  blocksAlongSays: 'left out: as drawn in',
  dye: 'Another colour',
  addDye: 'Add it',

  findings: 'Worth knowing',
  use: 'The cloth is for',
  anyUse: 'anything',
  uses: { towel: 'a towel', scarf: 'a scarf', blanket: 'a blanket', rug: 'a rug' } as Record<string, string>,
  loom: 'On the loom',
  anyLoom: 'none said',
  start: 'The shuttle starts',
  anyStart: 'where it catches best',
  fromLeft: 'from the left',
  fromRight: 'from the right',
  nothing: 'Nothing needs care.',
  many: (n: number) => `${counted(n, 'thing', 'things')} worth knowing.`,
  goThere: 'Go there',

  overview: 'All of it',
  cloth: 'The cloth it makes',
  take: 'Take it along',
  forms: { wif: 'Interchange text', svg: 'Drawing', png: 'Picture', pdf: 'On paper' },
  seen: 'What is in sight:',
  copySeen: 'Copy it as a picture',
  saveSeen: 'Keep it as a picture',
  printSeen: 'Print it',
  backAlone: 'From the back the files show the drawdown alone.',
  copied: 'The picture is copied.',
  notCopied: 'The browser did not let the picture be copied. Take it along as a file.',

  looks: 'How it is drawn',
  cells: 'Cells',
  cellChoices: [
    ['marks', 'filled: warp on top'],
    ['colours', 'the colour on top'],
    ['both', 'that colour, warp marked'],
  ] as const,
  seeing: 'Colours as seen',
  seeingChoices: [
    ['full', 'in full'],
    ['grey', 'as greys, for their contrast'],
    ['protan', 'without red cones'],
    ['deutan', 'without green cones'],
    ['tritan', 'without blue cones'],
  ] as const,
  seeingSays: 'So that stripes are told apart by everybody.',
  endsFrom: 'Ends are numbered',
  sides: [
    ['left', 'from the left'],
    ['right', 'from the right'],
  ] as const,
  picksRun: 'Picks run',
  ways2: [
    ['down', 'downwards'],
    ['up', 'upwards'],
  ] as const,
  threadingAt: 'The threading stands',
  heights: [
    ['above', 'above the cloth'],
    ['below', 'below the cloth'],
  ] as const,
  treadlingAt: 'Tie-up and treadling stand',
  sides2: [
    ['right', 'on the right'],
    ['left', 'on the left'],
  ] as const,
  fromBack: 'From the back',
  alone: 'The drawdown alone',
  toScale: 'Threads as thick as they are said to be',

  // cell is the cell at the cursor, read aloud.
  cell: ({ place, shaft, pressed, lifted, set, top, colour }: Cell): string => {
    const end = place.end === undefined ? '' : `end ${place.end + 1}`
    const pick = place.pick === undefined ? '' : `pick ${place.pick + 1}`
    const dye = colour ? `, ${/^#/.test(colour) ? dyeNamed(colour) : colour}` : ''
    switch (place.part) {
      case 'threading':
        return `${end}, shaft ${place.shaft ?? ''}${set ? ', threaded' : `; the end is on ${shaft ? `shaft ${shaft}` : 'no shaft'}`}${dye}`
      case 'ties':
        return `treadle ${place.treadle ?? ''}, shaft ${place.shaft ?? ''}, ${set ? 'tied' : 'not tied'}`
      case 'treadling':
        return `${pick}, treadle ${place.treadle ?? ''}${set ? ', pressed' : `; pressed ${numbers(pressed ?? [])}`}${dye}`
      case 'lifts':
        return `${pick}, shaft ${place.shaft ?? ''}${set ? ', up' : `; up ${numbers(lifted ?? [])}`}${dye}`
      case 'drawdown':
        return `${end}, ${pick}, ${top ? 'warp' : 'weft'} on top, shaft ${shaft ?? ''}${dye}`
      case 'warp-colours':
        return `${end}${dye}`
      case 'weft-colours':
        return `${pick}${dye}`
    }
    return ''
  },
}
