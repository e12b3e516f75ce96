import { readDoc } from '../doc'
import type { Stage } from '../place'
import { readAdvice } from './advice'
import { readAfter } from './after'
import { readRecord } from './record'
import { readOrigins, readShelves } from './shelf'
import { readSheets } from './sheets'

// more is what each stage shows beside the warp and its numbers.
const more: Record<Stage, () => Promise<unknown>> = {
  piece: () => Promise.resolve(),
  cloth: readShelves,
  numbers: readAdvice,
  dress: () => Promise.all([readShelves(), readSheets()]),
  weave: () => Promise.resolve(), // the log reads itself
  finish: () => Promise.all([readRecord(), readAfter(), readOrigins()]),
}

// readWarp reads a warp for one of its stages.
export async function readWarp(id: number, stage: Stage): Promise<boolean> {
  const fine = await readDoc(id)
  if (fine) await more[stage]()
  return fine
}
