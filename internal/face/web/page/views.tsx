import type { ComponentChild } from 'preact'
import { Bench } from './bench/page'
import { hand } from './bench/hand'
import { doc, readDoc } from './doc'
import { copied } from './new/copies'
import { readNew } from './new/form'
import { NewPage } from './new/page'
import { Nowhere } from './notices'
import type { Place } from './place'
import { LoomPage } from './shelf/loom'
import { LoomsPage } from './shelf/looms'
import { looms, readYarn, yarns } from './shelf/read'
import { readUnits, UnitsPage } from './shelf/units'
import { YarnPage } from './shelf/yarn'
import { YarnsPage } from './shelf/yarns'
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

const both = (...reads: (() => Promise<boolean>)[]) => async (): Promise<boolean> => (await Promise.all(reads.map((read) => read()))).every(Boolean)

const nowhere: View = { show: () => <Nowhere />, read: nothing, title: () => words.nowhere }

// views are all pages there are.
export const views: Record<Place['page'], View> = {
  bench: { show: () => <Bench />, read: () => hand.read(), title: () => words.heading },
  warp: { show: (p) => (p.page === 'warp' ? <WarpPage stage={p.stage} /> : null), read: (p) => (p.page === 'warp' ? readWarp(p.id, p.stage) : nothing()), title: nameOf(words.nothingOf) },
  new: { show: () => <NewPage />, read: both(readNew, copied.read), title: () => words.new_.title },
  yarns: { show: () => <YarnsPage />, read: () => yarns.read(), title: () => words.shelf.yarns },
  yarn: { show: () => <YarnPage />, read: (p) => (p.page === 'yarn' ? readYarn(p.id) : nothing()), title: nameOf(words.shelf.yarn) },
  looms: { show: () => <LoomsPage />, read: () => looms.read(), title: () => words.shelf.looms },
  loom: { show: () => <LoomPage />, read: (p) => (p.page === 'loom' ? readDoc(p.id) : nothing()), title: nameOf(words.shelf.loom) },
  drafts: nowhere,
  draft: nowhere,
  catalogue: nowhere,
  records: nowhere,
  units: { show: () => <UnitsPage />, read: readUnits, title: () => words.units },
  guide: nowhere,
  glossary: nowhere,
  nowhere,
}
