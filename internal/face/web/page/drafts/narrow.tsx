import { words } from '../words'
import { drafts } from './shelf'

const w = words.draft

const numbers = [
  ['shafts', 'mostShafts'],
  ['treadles', 'mostTreadles'],
  ['float', 'mostFloat'],
] as const

// isNarrow tells whether only some drafts are asked for, apart from words.
export const isNarrow = (): boolean => Object.entries(drafts.query.value).some(([name, value]) => name !== 'words' && value !== '')

const ask = (name: string, value: string): void => drafts.find({ ...drafts.query.value, [name]: value })

// Narrow asks for drafts that a loom can weave, and for those of one weave.
export function Narrow() {
  const now = drafts.query.value
  return (
    <fieldset class="narrow">
      <legend class="hidden">{w.narrow}</legend>
      <div class="field">
        <label for="narrow-weave">{w.weave}</label>
        <select id="narrow-weave" value={now.weave ?? ''} onChange={(event) => ask('weave', event.currentTarget.value)}>
          <option value="">{w.anyWeave}</option>
          {Object.entries(w.weaves).map(([mark, says]) => (
            <option key={mark} value={mark}>
              {says}
            </option>
          ))}
        </select>
      </div>
      {numbers.map(([name, label]) => (
        <AtMost key={name} name={name} label={w[label]} value={now[name] ?? ''} />
      ))}
    </fieldset>
  )
}

// AtMost is a number; what is none asks for nothing.
function AtMost({ name, label, value }: { name: string; label: string; value: string }) {
  const id = `narrow-${name}`
  return (
    <div class="field small-field">
      <label for={id}>{label}</label>
      <input
        id={id}
        type="text"
        inputMode="numeric"
        autocomplete="off"
        maxLength={4}
        value={value}
        onInput={(event) => ask(name, event.currentTarget.value.replace(/\D/g, ''))}
      />
    </div>
  )
}
