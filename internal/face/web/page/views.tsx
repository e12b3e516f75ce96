import type { ComponentChild } from 'preact'
import { Bench } from './bench/page'
import { hand } from './bench/hand'
import { BesidePage } from './beside/page'
import { readBeside } from './beside/state'
import { docName, readDoc } from './doc'
import { readWeaves } from './drafts/catalogue'
import { Catalogue } from './drafts/catalogue_page'
import { DraftPage } from './drafts/draft'
import { readDraft } from './drafts/open'
import { Drafts } from './drafts/page'
import { drafts } from './drafts/shelf'
import { copied } from './new/copies'
import { readNew } from './new/form'
import { NewPage } from './new/page'
import { Nowhere } from './notices'
import { Glossary } from './guide/glossary'
import { Guide, guideTitle, readGuide } from './guide/page'
import type { Place } from './place'
import { Records } from './records/page'
import { records } from './records/records'
import { LoomsidePage } from './loomside/page'
import { loom, readLoom } from './loomside/state'
import { LoomPage } from './shelf/loom'
import { LoomsPage } from './shelf/looms'
import { looms, readYarn, yarns } from './shelf/read'
import { readUnits, UnitsPage } from './shelf/units'
import { YarnPage } from './shelf/yarn'
import { YarnsPage } from './shelf/yarns'
import { TablePage } from './table/page'
import { readTable } from './table/session'
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
const nameOf = (otherwise: string) => (): string => docName.value ?? otherwise

const both = (...reads: (() => Promise<boolean>)[]) => async (): Promise<boolean> => (await Promise.all(reads.map((read) => read()))).every(Boolean)

const nowhere: View = { show: () => <Nowhere />, read: nothing, title: () => words.nowhere }

// views are all pages there are.
export const views: Record<Place['page'], View> = {
  bench: { show: () => <Bench />, read: () => hand.read(), title: () => words.heading },
  warp: { show: (p) => (p.page === 'warp' ? <WarpPage stage={p.stage} /> : null), read: (p) => (p.page === 'warp' ? readWarp(p.id, p.stage) : nothing()), title: nameOf(words.nothingOf) },
  loomside: { show: (p) => (p.page === 'loomside' ? <LoomsidePage id={p.id} /> : null), read: (p) => (p.page === 'loomside' ? readLoom(p.id) : nothing()), title: () => loom.value?.name ?? words.loomside.title },
  new: { show: () => <NewPage />, read: both(readNew, copied.read), title: () => words.new_.title },
  yarns: { show: () => <YarnsPage />, read: () => yarns.read(), title: () => words.shelf.yarns },
  yarn: { show: () => <YarnPage />, read: (p) => (p.page === 'yarn' ? readYarn(p.id) : nothing()), title: nameOf(words.shelf.yarn) },
  looms: { show: () => <LoomsPage />, read: () => looms.read(), title: () => words.shelf.looms },
  loom: { show: () => <LoomPage />, read: (p) => (p.page === 'loom' ? readDoc(p.id) : nothing()), title: nameOf(words.shelf.loom) },
  units: { show: () => <UnitsPage />, read: readUnits, title: () => words.units },
  beside: { show: () => <BesidePage />, read: readBeside, title: () => words.beside.title },
  drafts: { show: () => <Drafts />, read: () => drafts.read(), title: () => words.draft.heading },
  draft: { show: () => <DraftPage />, read: (p) => (p.page === 'draft' ? readDraft(p.id) : nothing()), title: nameOf(words.draft.nothingOf) },
  table: { show: (p) => (p.page === 'table' ? <TablePage of={p.of} id={p.id} /> : null), read: (p) => (p.page === 'table' ? readTable(p.id) : nothing()), title: nameOf(words.table.title) },
  catalogue: { show: () => <Catalogue />, read: readWeaves, title: () => words.draft.catalogue },
  records: { show: () => <Records />, read: () => records.read(), title: () => words.draft.records },
  guide: { show: (p) => (p.page === 'guide' ? <Guide part={p.part} /> : null), read: (p) => (p.page === 'guide' ? readGuide(p.part) : nothing()), title: (p) => (p.page === 'guide' ? guideTitle(p.part) : words.guide.title) },
  glossary: { show: () => <Glossary />, read: nothing, title: () => words.glossary },
  nowhere,
}
