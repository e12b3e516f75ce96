import { counted } from './counted'

// The words of the page where a warp is begun.
export const new_ = {
  title: 'A new warp',
  kind: 'From a kind of piece',
  units: { metric: 'in centimetres', imperial: 'in inches' },
  size: (length: string, width: string) => `${length} × ${width}`,
  unchosen: 'What is it to be?',
  unchosenSays: 'Choose a kind of piece, and the warp begins with its usual finished size. Every number can be changed afterwards.',
  usualSays: (source: string) => `Usual sizes: ${source}. Yours count more; they can be changed at once.`,
  name: 'Called',
  count: 'How many',
  part: { yarn: 'Yarn', loom: 'Loom', draft: 'Draft' },
  later: 'say it later',
  begin: 'Begin this warp',

  copy: 'From a warp you have',
  copySays: 'Its plan is copied as it stood before work began; what was measured and written down stays with the old one.',
  copySearch: 'Which',
  copyNone: 'There is no warp to copy yet.',
  copyThis: 'Copy',
  copyOf: (name: string) => `Copy ${name}`,

  file: 'From a file',
  fileSays: 'A plan file, or a draft as a WIF file. They can also be dropped anywhere on this page or on the bench; a WIF that a plan points to is dropped together with it.',
  choose: 'Choose files',
  drop: 'Let go to take the files into the book',
  taking: 'Reading the files',
  came: 'What came of the files',
  added: 'Added:',
  bad: (name: string) => `${name} was not added`,
  badSays: (many: number) => `${counted(many, 'thing keeps', 'things keep')} it out. Mend the file and take it in again.`,
  line: (line: number) => `line ${line}`,
  large: (name: string) => `${name} was not read: it is too large to be a plan or a draft.`,
}
