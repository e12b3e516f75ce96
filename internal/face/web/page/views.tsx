import type { ComponentChild } from 'preact'
import { Bench } from './bench/page'
import { hand } from './bench/hand'
import { doc } from './doc'
import { Nowhere } from './notices'
import { Glossary } from './guide/glossary'
import { Guide, guideTitle, readGuide } from './guide/page'
import type { Place } from './place'
import { WarpPage } from './warp/page'
import { readWarp } from './warp/read'
import { words } from './words'

// View is one kind of page: what it shows, what it reads of the book, what it is called.
export type View = {
  show: (place: Place) => ComponentChild
  read: (place: Place) => Promise<boolean>
  title: (place: Place) => string
}

const nothing = (): Promise<boolean> => Promise.resolve(true)
const nameOf = (otherwise: string) => (): string => doc.value?.name ?? otherwise

const nowhere: View = { show: () => <Nowhere />, read: nothing, title: () => words.nowhere }

// views are all pages there are.
export const views: Record<Place['page'], View> = {
  bench: { show: () => <Bench />, read: () => hand.read(), title: () => words.heading },
  warp: { show: (p) => (p.page === 'warp' ? <WarpPage stage={p.stage} /> : null), read: (p) => (p.page === 'warp' ? readWarp(p.id, p.stage) : nothing()), title: nameOf(words.nothingOf) },
  new: nowhere,
  yarns: nowhere,
  yarn: nowhere,
  looms: nowhere,
  loom: nowhere,
  drafts: nowhere,
  draft: nowhere,
  catalogue: nowhere,
  records: nowhere,
  units: nowhere,
  guide: { show: (p) => (p.page === 'guide' ? <Guide part={p.part} /> : null), read: (p) => (p.page === 'guide' ? readGuide(p.part) : nothing()), title: (p) => (p.page === 'guide' ? guideTitle(p.part) : words.guide.title) },
  glossary: { show: () => <Glossary />, read: nothing, title: () => words.glossary },
  nowhere,
}
