import type { Problem } from '../kinds'
import type { Place } from '../place'

// What became of a file that was taken in: it was added under a name, went with a plan
// that points to it, or was left out, for what is wrong with it or before it was sent.
export type Fate = { file: string; problems: Problem[] } & (
  | { is: 'added'; name: string; place: Place }
  | { is: 'beside'; of: string }
  | { is: 'refused' | 'large' | 'unread' }
)

export type Added = Extract<Fate, { is: 'added' }>

// isClean tells whether there is nothing to be read of a file. Notes on a plan stand at
// its numbers as well.
const isClean = ({ place, problems }: Added): boolean => problems.every((p) => place.page === 'warp' && p.severity === 'note')

// alone is the one file that came in, where it is clean and nothing else is to be told.
export function alone(all: readonly Fate[]): Added | null {
  const [only, ...others] = all.filter((one) => one.is !== 'beside')
  return only?.is === 'added' && others.length === 0 && isClean(only) ? only : null
}
