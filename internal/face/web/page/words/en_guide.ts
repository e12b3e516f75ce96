import { counted } from './counted'
import { loomParts } from './en_guide_loom'
import { planParts } from './en_guide_plan'
import { studioParts } from './en_guide_studio'

// The words of the guide and the glossary. How its texts lead elsewhere: guide/prose.ts.
export const guide = {
  title: 'Guide',
  intro: 'From the piece you want to the piece you measure, in eleven short parts. Read them in order once, or go where you are stuck.',
  parts: [...planParts, ...loomParts, ...studioParts],
  partsOf: 'Parts of the guide',
  overview: 'All parts',
  before: (title: string) => `Before: ${title}`,
  after: (title: string) => `Next: ${title}`,
  noPart: 'The guide has no such part',
  noPartSays: 'Its address may have been mistyped.',
  toGuide: 'To the guide',
  pictures: { cloth: 'the cloth', draft: 'the draft', board: 'the way over the warping board', ribbon: 'the stripes' } as Record<string, string>,
  figuresOf: (name: string) => `Figures of ${name}`,
  words: 'Words of the trade',
  wordsSay: 'every word sley uses, each with one meaning',

  // the warps of the demo that the guide speaks of, by their names in the book
  demo: {
    towels: 'Galley towels',
    blanket: 'Berth blanket',
    curtain: 'Huck lace curtain',
    bookmarks: 'Bookmarks, a class of eight',
    runner: 'Hatch runner, finished',
  },

  drawings: {
    along: { title: 'A warp laid out from front to back', front: 'front', back: 'back', sampling: 'sampling', towels: '6 towels', waste: 'waste' },
    draft: { title: 'Threading, tie-up, treadling and drawdown of a point twill', threading: 'threading', tieUp: 'tie-up', treadling: 'treadling', drawdown: 'drawdown' },
    ladder: { title: 'The length of one towel as warp, on the loom, relaxed and finished' },
    takeup: { title: 'A warp end that bends around picks, and the same end straight', bent: 'in the cloth', straight: 'pulled straight', lost: 'taken up' },
    share: { title: 'The same size wanted, once with a loss of a quarter divided out, once with a quarter added', divided: 'divided out', added: 'added', wanted: 'wanted', kept: 'kept', lost: 'lost' },
    cross: { title: 'Threads crossing between two pegs' },
    sley: { title: 'Ends in the dents of two reeds', even: '2 to a dent', mixed: '2-3-2-3-2' },
    wraps: { title: 'Yarn wrapped around a ruler', inch: '1 in' },
  },
  // the states of one towel: id in the reckoning, words, value; and what is lost between
  // two of them, by their places
  ladder: {
    states: [
      ['pieces[0].warp-each', 'as straight warp', '36 1/4 in'],
      ['pieces[0].on-loom', 'on the loom', '34 3/8 in'],
      ['pieces[0].relaxed', 'relaxed', '33 3/8 in'],
      ['pieces[0].finished', 'finished', '30 3/4 in'],
    ] as readonly (readonly [string, string, string])[],
    losses: [
      [0, 2, 'take-up 8 %'],
      [1, 2, 'relaxation 3 %'],
      [2, 3, 'shrinkage 8 %'],
    ] as readonly (readonly [number, number, string])[],
  },

  // glossary
  glossarySays: 'Each word has one meaning in sley, and it is the trade’s own wherever the trade has one. Where no source is named it is common practice.',
  terms: (n: number) => counted(n, 'word', 'words'),
  noTerm: (sought: string) => `No word has “${sought}” in it or in what it means.`,
  allTerms: 'Show all words',
  whatIs: (term: string) => `What is ${term}?`,
  inGlossary: (term: string) => `${term} among the words of the trade`,
}
