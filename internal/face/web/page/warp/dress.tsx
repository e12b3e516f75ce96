import { useSignal } from '@preact/signals'
import { act } from '../deeds'
import { doc, numbers, valueAt } from '../doc'
import { Choice, Field, Group } from '../field'
import { textOf } from '../tree'
import { words } from '../words'
import { Lines } from './lines'
import { SheetsToPrint } from './sheets'
import { shelfLooms } from './shelf'
import { FromShelf } from './yarns'

const w = words.warp

// Dress is the loom, the winding, and the sheets to dress it by.
export function Dress() {
  return (
    <>
      <SheetsToPrint />
      <div class="columns">
        <div>
          <Loom />
          <Winding />
          <Begin />
        </div>
        <div class="answers">
          <Board />
          <Lines title={w.reckoning} sections={['winding', 'raddle', 'sections', 'reed', 'heddles']} />
        </div>
      </div>
    </>
  )
}

const sheds = ['rising', 'sinking', 'counterbalance', 'countermarch', 'table'].map((one) => [one, one] as const)

function Loom() {
  const now = doc.value
  const chosen = useSignal('')
  if (!now) return null
  const name = textOf(valueAt('loom.name'))
  return (
    <Group title={w.loom}>
      <FromShelf part="loom" name={name || w.loom} />
      <div class="fields add">
        <div class="field">
          <label for="shelf-loom">{w.loomFrom}</label>
          <select id="shelf-loom" value={chosen.value} onChange={(event) => (chosen.value = event.currentTarget.value)}>
            <option value="">{w.loomChoose}</option>
            {shelfLooms.value.map((loom) => (
              <option key={loom.id} value={String(loom.id)}>
                {loom.name}
              </option>
            ))}
          </select>
        </div>
        {chosen.value !== '' && (
          <p class="field act">
            <button type="button" class="plain" onClick={() => void act(now, 'use', { part: 'loom', shelf: Number(chosen.value) })}>
              {w.takeYarn}
            </button>
          </p>
        )}
      </div>
      <div class="fields">
        <Field path="warp.reed" label={w.reed} hint={w.reedHint} />
        <Field path="warp.sleying" label={w.sleying} hint={w.sleyingHint} />
      </div>
      <details>
        <summary>{words.shelf.loomMore}</summary>
        <LoomFields before="loom" />
      </details>
    </Group>
  )
}

// LoomFields are the fields of a loom, in a warp or on the shelf.
export function LoomFields({ before }: { before: string }) {
  const at = (key: string) => (before ? `${before}.${key}` : key)
  const s = words.shelf
  const waste = valueAt(at('waste'))
  return (
    <div class="fields">
      <Field path={at('shafts')} label={s.shafts} number />
      <Field path={at('treadles')} label={s.treadles} number />
      <Choice path={at('shed')} label={s.shed} choices={sheds} none={s.unsaid} />
      <Field path={at('width')} label={s.weavingWidth} />
      <Reeds path={at('reeds')} />
      <Field path={at('heddles')} label={s.heddles} hint={s.heddlesHint} number />
      <Field path={at('waste')} label={s.waste} {...(typeof waste === 'object' ? {} : { hint: s.wasteHint })} />
      <Field path={at('beam-holds')} label={s.beamHolds} />
      <Field path={at('beams')} label={s.beams} number />
    </div>
  )
}

function Reeds({ path }: { path: string }) {
  const list = valueAt(path)
  const many = Array.isArray(list) ? list.length : 0
  return (
    <fieldset class="field table wide">
      <legend>{words.shelf.reeds}</legend>
      {Array.from({ length: many + 1 }, (_, i) => (
        <Field key={i} path={`${path}[${i}]`} label={i < many ? words.shelf.reed(i + 1) : words.shelf.addReed} {...(i === many ? { placeholder: '12 dpi' } : {})} />
      ))}
    </fieldset>
  )
}

// Winding is how the warp is wound and spread.
export function Winding() {
  return (
    <Group title={w.winding}>
      <div class="fields">
        <Choice path="winding.board" label={w.board} choices={[['usual', w.boardUsual]]} none={words.shelf.unsaid} />
        <Field path="winding.mill" label={w.mill} />
        <Field path="winding.together" label={w.together} number />
        <Field path="winding.bout" label={w.bout} number />
        <Field path="winding.tie" label={w.tie} number />
        <Field path="winding.raddle" label={w.raddle} hint={w.raddleHint} />
        <Field path="winding.section" label={w.section} />
      </div>
    </Group>
  )
}

// Board is the warping board to scale with the path of this warp on it.
function Board() {
  const now = doc.value
  const wound = numbers.value?.sections.some((s) => s.id === 'winding')
  const missing = useSignal(0)
  if (!now || !wound || missing.value === now.version) return null
  return (
    <section>
      <h2>{w.path}</h2>
      <img class="board" src={`/api/documents/${now.id}/picture?of=board&v=${now.version}`} alt={w.path} onError={() => (missing.value = now.version)} />
    </section>
  )
}

// Begin is where planning ends.
function Begin() {
  const now = doc.value
  if (!now) return null
  return (
    <Group title={w.begin} says={now.started ? w.begun : w.beginSays}>
      <p class="aside">{w.ratchet}</p>
      {!now.started && (
        <p class="buttons">
          <button type="button" class="plain" onClick={() => void act(now, 'start')}>
            {w.beginNow}
          </button>
        </p>
      )}
    </Group>
  )
}

