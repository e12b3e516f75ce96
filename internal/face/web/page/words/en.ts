// Every word of the page in English, but those that the server sends. Figures come
// worded from the server; the counts here are of things on this page.

import type { Place } from '../place'
import { counted } from './counted'
import { warp } from './en_warp'
import { beside } from './en_beside'
import { document_ } from './en_document'
import { draft } from './en_draft'
import { guide } from './en_guide'
import { loomside } from './en_loomside'
import { loomsideLog } from './en_loomside_log'
import { new_ } from './en_new'
import { shelf } from './en_shelf'
import { table } from './en_table'
import { taking } from './en_taking'
import { terms } from './en_terms'

const day = new Intl.DateTimeFormat('en-GB', { day: 'numeric', month: 'long', year: 'numeric' })

export const english = {
  program: 'sley',
  document_,
  warp,
  shelf,
  draft,
  guide,
  loomside,
  loomsideLog,
  new_,
  table,
  taking,
  terms,
  beside,

  skip: 'To the page itself',
  pages: 'Pages',
  tabs: { bench: 'Bench', yarns: 'Yarns', looms: 'Looms', drafts: 'Drafts', records: 'Records', guide: 'Guide' },
  units: 'Units',
  glossary: 'Words of the trade',
  nowhere: 'Nothing stands here',
  nowhereSays: 'This address leads to nothing in the book. It may have been mistyped, or what stood here was removed.',
  toBench: 'To the bench',
  newWarp: 'New warp',
  nothing: 'nothing',
  goOn: 'Go on with it',
  next: 'Next:',
  progressOf: (name: string) => `How far ${name} is woven`,
  remove: 'Remove',
  close: 'Close',
  more_: 'More',
  heading: 'Warps in hand',
  book: 'book',
  bookAt: (place: string) => `The book: ${place}`,
  reading: 'Reading the book',

  saved: 'saved',
  saving: 'saving',
  unsaved: 'not saved yet',
  away: 'not answering',
  closed: 'closed to this window',

  search: 'Search',
  showAll: 'Show all warps',
  found: (total: number) => counted(total, 'warp', 'warps'),
  foundFor: (total: number, search: string) => `${counted(total, 'warp', 'warps')} with “${search}”`,
  noneFound: (search: string) => `No warp has “${search}” in it.`,
  more: 'Show more',
  shownOf: (shown: number, total: number) => `${shown} of ${total} shown`,

  undo: 'Undo',
  redo: 'Redo',
  undoTitle: 'Undo the last change of this window (Ctrl+Z)',
  redoTitle: 'Redo what was undone last (Ctrl+Shift+Z)',
  undone: (name: string) => `Undone: ${name}`,
  redone: (name: string) => `Redone: ${name}`,
  savedName: (name: string) => `Saved: ${name}`,
  finishFirst: (name: string) => `Save or drop the new name of ${name} first`,
  nothingOf: 'a warp',

  rename: 'Rename',
  renameOf: (name: string) => `Rename ${name}`,
  name: 'Name',
  save: 'Save',
  drop: 'Drop',
  editHint: 'Enter saves, Escape drops',
  stillOpen: 'Not in the list below, and still open here',
  waitingFor: 'Kept here. It is saved as soon as sley answers.',

  figuresOf: (name: string) => `Key numbers of ${name}`,
  fromDemo: 'demo',
  day: (when: string) => day.format(new Date(when)),
  changed: (when: string) => `changed ${day.format(new Date(when))}`,
  line: (line: number) => `line ${line}`,
  problems: (n: number) => `${counted(n, 'thing needs', 'things need')} care`,

  clash: (name: string) => `${name} was changed elsewhere`,
  clashSays: 'Nothing has been written over. Choose which to keep.',
  theirs: 'In the book now',
  yours: 'Yours',
  takeTheirs: 'Keep what is in the book',
  takeYours: 'Keep yours',
  paths: { name: 'name' } as Record<string, string>,

  faultReport: 'Report',
  copy: 'Copy the report',
  copied: 'Copied',
  copyYourself: 'Marked: copy it with Ctrl+C',
  faultNext: 'What you typed is still here. Try again; if it stays, send the report to whoever gave you sley.',
  strangeAnswer: 'sley answered in a way this page does not understand. This is our fault, not yours.',
  put: 'Put away',

  goneHead: 'sley is not answering',
  goneSays: 'It may have been closed. This page looks for it by itself; nothing you typed is lost.',
  refusedHead: 'This window is no longer let in',
  refusedSays: 'Open sley again, as you did the first time, and go on in the window it opens. What you typed stays here.',
  again: 'Try now',

  demoSays: 'The warps marked demo are of Saltmarsh, a studio that does not exist. Look around, change what you like; each change can be undone.',
  demoGuide: 'What to look at first',
  clearDemo: 'Clear the demo',
  cleared: (removed: number) => `The demo is cleared: ${counted(removed, 'thing', 'things')} taken out.`,

  emptyHead: 'This book is empty',
  emptySays: 'It keeps four things, and here is what goes where.',
  emptyParts: [
    ['Looms', 'how wide, how many shafts and treadles, which reeds. A plan is held against its loom.', { page: 'looms' }],
    ['Yarns', 'what is on the shelf, how thick it is and what it costs.', { page: 'yarns' }],
    ['Drafts', 'threadings, tie-ups and treadlings to weave by.', { page: 'drafts' }],
    ['Warps', 'each with its pieces, where it stands and its key numbers. They stand on this page; begin one without the rest, if you like.', { page: 'new' }],
  ] as readonly (readonly [string, string, Place])[],

  emptyGuide: 'Not sure where to start? The guide goes the whole way once, beginning with',
  emptyGuideLink: 'the piece',
  emptyUnits: '. Inches or centimetres, yards or metres are chosen under',

  shelves: (yarns: number, looms: number, drafts: number) =>
    `Also in the book: ${counted(yarns, 'yarn', 'yarns')}, ${counted(looms, 'loom', 'looms')}, ${counted(drafts, 'draft', 'drafts')}.`,
  licences: 'Licences',

  // keys of small tables in a plan
  keys: {
    hem: 'depth of the hem', 'turn-in': 'turn-in', turned: 'turned', outside: 'outside the allowances', fringe: 'fringe, finished', twist: 'lost by twisting',
    'yarn-shrinkage': 'lost by washing', knot: 'taken by the knot', inside: 'inside the allowances', ends: 'ends', yarn: 'yarn', heddle: 'heddle',
    length: 'length', weight: 'weight', skeins: 'skeins', relaxed: 'after the twist was set', scoured: 'washed', 'tie-on': 'tying on',
    unreachable: 'out of reach', back: 'at the back', 'gives-fringe': 'gives the fringes', 'take-up': 'take-up', extra: 'longer by',
  } as Record<string, string>,
}
