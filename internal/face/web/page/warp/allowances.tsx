import { save } from '../deeds'
import { numbers } from '../doc'
import { doc, edit, valueAt } from '../doc'
import { Group, idOf, problemsAt, putAt, setNow } from '../field'
import { Set } from '../figure'
import type { Allowance } from '../kinds_doc'
import { Problems } from '../problems'
import { Label } from '../term'
import { termOfLoss } from '../term_at'
import { textOf } from '../tree'
import { words } from '../words'
import { advice } from './advice'

const w = words.warp

// Allowances are what the cloth loses, each in the form the weaver writes it.
export function Allowances() {
  const all = numbers.value?.allowances ?? []
  const stands = (a: Allowance) => (a.origin !== 'none' && a.origin !== 'reckoned') || a.typed !== '' || edit.value?.value[a.path] !== undefined
  const unsaid = all.filter((a) => !stands(a))
  return (
    <Group title={w.allowances} says={w.allowancesSays} term="allowance">
      {all.filter(stands).map((a) => (
        <AllowanceRow key={a.path} of={a} />
      ))}
      {unsaid.length > 0 && (
        <details>
          <summary>{w.unsaid}</summary>
          {unsaid.map((a) => (
            <AllowanceRow key={a.path} of={a} />
          ))}
        </details>
      )}
    </Group>
  )
}

function AllowanceRow({ of }: { of: Allowance }) {
  const id = idOf(of.path)
  const wrong = problemsAt(of.path)
  return (
    <div class="allowance">
      <Label of={id} term={termOfLoss(of.key)} class="says">
        {of.says}
      </Label>
      <input
        id={id}
        name={of.path}
        type="text"
        autocomplete="off"
        spellcheck={false}
        value={textOf(valueAt(of.path))}
        placeholder={of.value}
        aria-describedby={`${id}-about`}
        aria-invalid={wrong.some((p) => p.severity === 'error')}
        onInput={(event) => putAt(of.path, event.currentTarget.value.trim() === '' ? null : event.currentTarget.value)}
        onChange={() => doc.value && void save(doc.value.id)}
      />
      <div id={`${id}-about`} class="about">
        <p class="soft">{aboutOf(of)}</p>
        <Problems of={wrong} />
        <Choices of={of} />
      </div>
    </div>
  )
}

function aboutOf(of: Allowance): string {
  const parts = of.origin === 'default' ? [w.default_] : []
  if (of.usual) parts.push(w.usually(of.usual))
  return parts.length > 0 ? parts.join('; ') : w.between(of.from, of.to)
}

// Choices are other readings of what is written, and what she has measured before.
function Choices({ of }: { of: Allowance }) {
  const measured = advice.value.filter((a) => a.key === of.key && a.typed !== of.typed)
  return (
    <>
      {of.others.map((other) => (
        <p key={other.typed} class="aside">
          {w.otherReading}: <Set text={other.says} />{' '}
          <button type="button" class="link" onClick={() => setNow(of.path, other.typed)} aria-label={`${w.useThis}: ${other.typed}`}>
            {w.useThis}
          </button>
        </p>
      ))}
      {measured.map((one) => (
        <p key={one.says + one.typed} class="aside">
          {one.says}: <Set text={one.value} />{' '}
          <button type="button" class="link" onClick={() => setNow(of.path, one.typed)} aria-label={`${w.useThis}: ${one.typed}`}>
            {w.useThis}
          </button>
        </p>
      ))}
    </>
  )
}
