import { valueAt } from '../doc'
import { Choice, Field, Group } from '../field'
import { words } from '../words'
import { BoardFields } from './board'

const s = words.shelf
const w = words.warp

export const sheds = ['rising', 'sinking', 'counterbalance', 'countermarch', 'table'].map((one) => [one, one] as const)

// LoomFields are the fields of a loom, in a warp or on the shelf.
export function LoomFields({ before }: { before: string }) {
  const at = (key: string) => (before ? `${before}.${key}` : key)
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
      <Field path={at('beams')} label={s.beams} number placeholder="1" />
    </div>
  )
}

function Reeds({ path }: { path: string }) {
  const list = valueAt(path)
  const many = Array.isArray(list) ? list.length : 0
  return (
    <fieldset class="field table wide">
      <legend>{s.reeds}</legend>
      {Array.from({ length: many + 1 }, (_, i) => (
        <Field key={i} path={`${path}[${i}]`} label={i < many ? s.reed(i + 1) : s.addReed} {...(i === many ? { placeholder: '12 dpi' } : {})} />
      ))}
    </fieldset>
  )
}

// Winding is how warps are wound and spread.
export function Winding() {
  return (
    <Group title={w.winding}>
      <BoardFields />
      <div class="fields">
        <Field path="winding.together" label={w.together} number placeholder="1" />
        <Field path="winding.bout" label={w.bout} number />
        <Field path="winding.peg" label={s.pegHolds} hint={s.pegHoldsHint} />
        <Field path="winding.tie" label={w.tie} number />
        <Field path="winding.raddle" label={w.raddle} hint={w.raddleHint} />
        <Field path="winding.section" label={w.section} />
        <Field path="winding.beam-girth" label={w.beamGirth} />
      </div>
    </Group>
  )
}
