import { doc, numbers, valueAt } from '../doc'
import { Choice, Field, Group, putAt, setNow, Tick } from '../field'
import type { Json } from '../kinds'
import { isTable, itemsOf, pathOf, textOf, under } from '../tree'
import { words } from '../words'
import { weaves } from '../words/weaves'
import { Lines } from './lines'
import { Strip } from './strip'

const w = words.warp

// Piece says what is wanted: which pieces, how big, how finished.
export function Piece() {
  const many = Math.max(1, itemsOf(whole(), 'pieces'))
  return (
    <>
      <Strip />
      <div class="columns">
        <div>
          <Group title={w.pieces} says={w.piecesSays}>
            {Array.from({ length: many }, (_, i) => (
              <PieceFields key={i} i={i} alone={many === 1} />
            ))}
            <p class="buttons">
              <button type="button" class="plain" onClick={() => setNow(pathOf('pieces', many), { name: `${w.piece} ${many + 1}` })}>
                {w.addPiece}
              </button>
            </p>
          </Group>
          <Whole />
        </div>
        <div class="answers">
          <Lines title={w.comesOf} sections={['found', 'glance']} piece />
        </div>
      </div>
    </>
  )
}

// whole is the plan with what is being typed, as far as lists are concerned.
const whole = (): Json => ({ pieces: valueAt('pieces') ?? [] })

function PieceFields({ i, alone }: { i: number; alone: boolean }) {
  const at = pathOf('pieces', i)
  const name = textOf(valueAt(under(at, 'name'))) || w.piece
  return (
    <fieldset class="entry">
      <legend>{name}</legend>
      <div class="fields">
        <Field path={under(at, 'name')} label={w.pieceName} />
        <Field path={under(at, 'count')} label={w.count} number placeholder="1" />
        <Field path={under(at, 'length')} label={w.length} hint={w.lengthHint} />
        <Field path={under(at, 'width')} label={w.width} hint={i === 0 ? w.widthHint : w.widthAlso} />
        <Ends at={at} />
      </div>
      <MorePiece at={at} />
      {alone || (
        <button type="button" class="link" onClick={() => removePiece(i)}>
          {w.removePiece(name)}
        </button>
      )}
    </fieldset>
  )
}

// removePiece takes one item out of the list, which then is shorter.
const removePiece = (i: number): void => setNow(pathOf('pieces', i), null)

// Ends are alike, or each is finished in its own way.
function Ends({ at }: { at: string }) {
  const first = valueAt(under(at, 'first'))
  const last = valueAt(under(at, 'last'))
  const differ = (first ?? null) !== null || (last ?? null) !== null
  if (!differ) {
    return (
      <>
        <Field path={under(at, 'both')} label={w.ends} hint={w.endsHint} suggest={['none', 'hem 1 in + 1/4 in', 'fringe 5 in', 'hem 2.5 cm + 6 mm', 'fringe 12 cm']} />
        <p class="field act">
          <button type="button" class="link" onClick={() => part(at)}>
            {w.apart}
          </button>
        </p>
      </>
    )
  }
  return (
    <>
      <Field path={under(at, 'first')} label={w.first} hint={w.endsHint} />
      <Field path={under(at, 'last')} label={w.last} />
      <p class="field act">
        <button type="button" class="link" onClick={() => join(at)}>
          {w.alike}
        </button>
      </p>
    </>
  )
}

function part(at: string): void {
  const both = valueAt(under(at, 'both')) ?? 'none'
  putAt(under(at, 'both'), null)
  putAt(under(at, 'first'), both)
  setNow(under(at, 'last'), both)
}

function join(at: string): void {
  const first = valueAt(under(at, 'first')) ?? null
  putAt(under(at, 'first'), null)
  putAt(under(at, 'last'), null)
  setNow(under(at, 'both'), first)
}

function MorePiece({ at }: { at: string }) {
  const used = ['motif', 'border', 'far-border', 'order', 'trim', 'cut-off', 'panels', 'seam'].some((key) => (valueAt(under(at, key)) ?? null) !== null)
  return (
    <details open={used}>
      <summary>{w.morePiece}</summary>
      <div class="fields">
        <Field path={under(at, 'motif')} label={w.motif} hint={w.motifHint} />
        <Field path={under(at, 'border')} label={w.border} hint={w.borderHint} wide />
        <Choice path={under(at, 'far-border')} label={w.farBorder} choices={w.farBorders as never} none="mirrored" />
        <Field path={under(at, 'order')} label={w.order} wide />
        <Field path={under(at, 'trim')} label={w.trim} />
        <Field path={under(at, 'panels')} label={w.panels} number />
        <Field path={under(at, 'seam')} label={w.seam} />
        <Tick path={under(at, 'cut-off')} label={w.cutOff} />
      </div>
    </details>
  )
}

// Whole is what holds for the whole warp.
function Whole() {
  const sampling = valueAt('sampling')
  return (
    <Group title={w.whole}>
      <div class="fields">
        <Choice path="weave" label={w.weave} choices={weaves} none={w.weaveNone} />
        <Choice path="wash" label={w.wash} choices={w.washes as never} none={w.washNone} />
        <Field path="gap" label={w.gap} />
        <Field path="header" label={w.header} />
        <Field path="sampling.length" label={w.sampling} hint={w.samplingHint} />
        {isTable(sampling) && <Tick path="sampling.cut-off" label={w.samplingCut} />}
        <Field path="note" label={w.note} wide />
        <Field path="date" label={w.date} placeholder="2026-03-01" />
      </div>
    </Group>
  )
}

// pieceSections are the sections of the reckoning that are about one kind of piece.
export const pieceSections = (): string[] => (numbers.value?.sections ?? []).map((s) => s.id).filter((id) => id.startsWith('pieces['))

export const started = (): boolean => doc.value?.started === true
