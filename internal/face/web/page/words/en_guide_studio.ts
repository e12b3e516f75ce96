import type { Part } from '../guide/kinds'

// The guide to the book, to teaching with it, and to taking care.
export const studioParts: readonly Part[] = [
  {
    id: 'book',
    title: 'The book',
    says: 'what is kept, how it is undone, copies and files',
    blocks: [
      'All you do is kept in one file on your own machine: the book. The foot of every page says where it lies. sley sends nothing anywhere, and needs no account and no network.',
      { head: 'Saving' },
      'There is nothing to save by hand. A field is saved when you leave it or press Enter, and the top of the page says whether all is safe. If sley is closed while you type, what you typed is kept in this window and goes into the book when it answers again.',
      { head: 'Undoing' },
      'Nothing in the book is ever written over. Every change makes a new version of a warp, a yarn, a loom or a draft. Undo takes back the last change of this window, and the one before, as far back as you like; what was removed comes back the same way.',
      { head: 'Two windows' },
      'The book may be open in several windows at once, and each hears of what the others save. Undo belongs to its window. If two change the same thing, nothing is written over: both are shown side by side, and you choose.',
      { head: 'Copies' },
      'The first change of a day makes a copy of the book before it, in a folder beside it; the oldest copies of days are let go. They lie on the same disk, so carry one elsewhere now and then. “sley book copy FILE” makes a whole copy, also while sley is running. Copying the file by other means is not safe while it is in use.',
      { head: 'Files' },
      {
        pairs: [
          ['[plan file](#plan-file)', 'a warp as a short text that can be read, mailed and printed'],
          ['interchange text', 'a draft as other programs read and write it, with the ending .wif'],
          ['picture', 'a draft as SVG, PNG or PDF'],
          ['folder', '“sley book export FOLDER” writes everything as files; “sley book import FOLDER” takes them in'],
        ],
      },
      'Everything on these pages can be done by a command as well: “sley help” says how.',
    ],
  },
  {
    id: 'teaching',
    title: 'Teaching with it',
    says: 'why each number is what it is, on the page and on paper',
    blocks: [
      'A number that falls out of a machine teaches nothing. Every number of a plan has its [working](#working): press it, and read the formula with its figures, in words, with its source.',
      { head: 'In front of a class' },
      {
        steps: [
          'Open the [Numbers](@towels/numbers) of a plan, and let the class reckon the warp for one towel by hand.',
          'Press “warp for one” and compare. Whoever added the percentages is short, and the working shows by how much.',
          'Change one allowance and ask what will move before you look.',
          'Put a wrong reed in, and read aloud what is told and why.',
        ],
      },
      'The [guide to numbers](/guide/numbers) has the drawings for it, and every word with a dotted line below it opens its meaning. All of them stand in the [words of the trade](/glossary).',
      { head: 'On paper' },
      'A plan may have a class: so many looms with a warp each, or so many weavers in turn on one. Then three more sheets can be printed:',
      {
        pairs: [
          ['class', 'every figure with its working, in the order of the work'],
          ['worksheet', 'the same with every figure blank, to be worked out by hand for a piece of one’s own'],
          ['kits', 'how much of each yarn to weigh out for every loom or weaver'],
        ],
      },
      'In the demo, [Bookmarks](@bookmarks/dress) is such a class of eight on table looms.',
    ],
  },
  {
    id: 'care',
    title: 'Taking care',
    says: 'warps, water, dust, and long hours',
    blocks: [
      'The sheets say these once, where they apply. They stand in for no rule of a workshop, a school or a country: where you have such rules, those come first.',
      {
        pairs: [
          ['Warps', 'A warp under tension stores hundreds of newtons, and ratchets pinch. Keep hands and hair away from pawl and ratchet, let tension off by the brake and never by a knocked-out pawl, and tie long hair and sleeves back.'],
          ['Water', 'Hot water burns, and wet cloth is heavy. Wear gloves, lift little at a time, keep children away from the tub. What the yarn’s label says of washing comes first.'],
          ['Dust', 'Dust of fleece and fibre harms lungs. Open and card it outdoors or with the air drawn off, wear a mask that your local rules call fit, and wash hands; raw fleece may carry germs.'],
          ['Hours', 'Long sessions strain backs, eyes and hands. Stand up and change task before it hurts: wind a bobbin, hem, walk.'],
          ['Blades', 'Cut away from yourself, and cover the teeth of a [temple](#temple) that is not in use.'],
        ],
      },
      'Labels of fibre content and care differ from country to country. sley reckons; what a label must say is for you to look up where you sell.',
    ],
  },
]
