import { useSignal } from '@preact/signals'
import { useRef } from 'preact/hooks'
import { doc } from '../doc'
import { Set } from '../figure'
import { FigureLine } from '../lines'
import { ProblemList } from '../problems'
import { words } from '../words'
import { type Label, label, type LabelForm } from './after'
import { stageOf } from './numbers'

const w = words.warp

// LabelText is what the label of the cloth says, or what is missing for it.
export function LabelText() {
  const now = label.value
  if (!now) return null
  const to = (path: string) => ({ page: 'warp' as const, id: doc.value?.id ?? 0, stage: stageOf(path) })
  return (
    <section class="label-text">
      <h2>{w.label}</h2>
      <p class="aside">{now.check}</p>
      <ProblemList of={now.problems} to={to} />
      {now.forms.map((form) => (
        <Form key={form.form} form={form} />
      ))}
      <Care of={now} />
      {now.forms.length > 0 && <Counted of={now} />}
    </section>
  )
}

// Form is the text by one set of rules. Where a page may not write to the clipboard the text
// is marked instead.
function Form({ form }: { form: LabelForm }) {
  const text = useRef<HTMLParagraphElement>(null)
  const copied = useSignal('')
  const copy = async () => {
    try {
      await navigator.clipboard.writeText(form.text)
      copied.value = words.copied
    } catch {
      if (text.current) getSelection()?.selectAllChildren(text.current)
      copied.value = words.copyYourself
    }
  }
  return (
    <div class="label-form" data-form={form.form}>
      <h3>{form.says}</h3>
      <p class="label-line" ref={text}>
        {form.text}
      </p>
      <p class="buttons">
        <button type="button" class="plain" onClick={() => void copy()}>
          {w.copyLabel(form.says)}
        </button>
        <span role="status">{copied.value}</span>
      </p>
      <p class="soft">{[`${form.rules}.`, ...form.notes].join(' ')}</p>
    </div>
  )
}

function Care({ of }: { of: Label }) {
  return (
    <>
      <h3>{w.careOf}</h3>
      {of.care.length === 0 && <p class="soft">{w.careNone}</p>}
      <ul class="care-list" role="list">
        {of.care.map((one) => (
          <li key={one.about}>
            {one.says}
            {one.why ? <span class="soft"> ({one.why})</span> : null}
          </li>
        ))}
      </ul>
      <p class="soft">{of.cites}</p>
    </>
  )
}

// Counted is what was weighed, in which condition, and the shares before they are rounded.
function Counted({ of }: { of: Label }) {
  return (
    <details>
      <summary>{w.counted}</summary>
      {of.basis.map((text) => (
        <p key={text}>{text}</p>
      ))}
      <ul class="lines" role="list">
        {of.yarns.map((one) => (
          <FigureLine key={one.yarn} says={one.yarn || w.theYarn} note={w.inWarpAndWeft(one.warp, one.weft)}>
            <Set text={one.weight} />
          </FigureLine>
        ))}
        {of.shares.map((one) => (
          <FigureLine key={one.fibre} says={one.fibre} note={w.dryShare(one.dry, one.allowance)}>
            {one.label}
          </FigureLine>
        ))}
      </ul>
    </details>
  )
}
