import type { Problem } from '../kinds'
import { Problems } from '../problems'
import { words } from '../words'
import type { Param } from './weave'

const w = words.draft

// rangeOf says what a number may be.
function rangeOf({ kind, least, most, even, means }: Param): string {
  const range = kind === 'count' && least !== undefined && most !== undefined ? (even ? w.evenFrom : w.from)(least, most) : ''
  const form = kind === 'ratio' ? w.ratioHint : kind === 'units' ? w.unitsHint : ''
  return [means, range, form].filter(Boolean).join('; ')
}

type FieldProps = { of: Param; value: string | undefined; set: (to: string) => void; wrong: readonly Problem[] }

// ParamField asks for a number of a weave, or for a choice.
export function ParamField({ of: param, set, wrong, ...now }: FieldProps) {
  const id = `param-${param.name}`
  const bad = wrong.filter((p) => p.path === param.name)
  const value = now.value ?? param.default
  return (
    <div class="field param">
      <label for={id} class="sentence">
        {param.says}
      </label>
      {param.options ? (
        <select id={id} value={value} aria-describedby={`${id}-about`} onChange={(event) => set(event.currentTarget.value)}>
          {param.options.map((one) => (
            <option key={one.value} value={one.value}>
              {one.says}
            </option>
          ))}
        </select>
      ) : (
        <input
          id={id}
          type="text"
          inputMode={param.kind === 'count' ? 'numeric' : 'text'}
          autocomplete="off"
          spellcheck={false}
          value={value}
          aria-invalid={bad.length > 0}
          aria-describedby={`${id}-about`}
          onInput={(event) => set(event.currentTarget.value)}
        />
      )}
      <div id={`${id}-about`} class="about">
        <p class="soft sentence">{rangeOf(param)}</p>
        <Problems of={bad} />
      </div>
    </div>
  )
}
