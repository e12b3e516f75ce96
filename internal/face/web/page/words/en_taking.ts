import { counted } from './counted'

// The words of files that are taken in, wherever that is done.
export const taking = {
  choose: 'Choose files',
  bring: 'Bring in a file',
  drop: 'Let go to take the files into the book',
  reading: 'Reading the files',
  came: 'What came of the files',
  added: (file: string) => `${file} was added as`,
  addedAs: (file: string, name: string) => `${file} was added as ${name}`,
  beside: (file: string, plan: string) => `${file} was read together with ${plan}, which points to it`,
  refused: (file: string) => `${file} was not added`,
  refusedSays: (many: number) => `${counted(many, 'thing keeps', 'things keep')} it out. Mend the file and take it in again.`,
  large: (file: string) => `${file} was not read: it is too large to be a plan or a draft.`,
  unread: (file: string) => `${file} could not be read. A folder cannot be taken in; take in the files in it.`,
}
