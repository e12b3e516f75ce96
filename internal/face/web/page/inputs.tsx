// Inputs of forms that are sent whole: what is typed belongs to the form, not to a
// document.

type TextProps = {
  id: string
  label: string
  value: string
  set: (to: string) => void
  hint?: string
  placeholder?: string | undefined
  number?: boolean
  class?: string
}

export function Text({ id, label, value, set, hint, placeholder, number, ...more }: TextProps) {
  return (
    <div class={`field ${more.class ?? ''}`}>
      <label for={id}>{label}</label>
      <input
        id={id}
        type="text"
        inputMode={number ? 'numeric' : 'text'}
        autocomplete="off"
        spellcheck={false}
        placeholder={placeholder}
        value={value}
        aria-describedby={hint ? `${id}-about` : undefined}
        onInput={(event) => set(event.currentTarget.value)}
      />
      {hint && (
        <p id={`${id}-about`} class="soft">
          {hint}
        </p>
      )}
    </div>
  )
}

export function TickBox({ id, label, value, set }: { id: string; label: string; value: boolean; set: (to: boolean) => void }) {
  return (
    <div class="field tick">
      <input id={id} type="checkbox" checked={value} onChange={(event) => set(event.currentTarget.checked)} />
      <label for={id}>{label}</label>
    </div>
  )
}

type SelectProps = { id: string; label: string; value: string; choices: readonly (readonly [string, string])[]; set: (to: string) => void; none?: string; hint?: string; class?: string }

export function Select({ id, label, value, choices, set, none, hint, ...more }: SelectProps) {
  return (
    <div class={`field ${more.class ?? ''}`}>
      <label for={id}>{label}</label>
      <select id={id} value={value} aria-describedby={hint ? `${id}-about` : undefined} onChange={(event) => set(event.currentTarget.value)}>
        {none !== undefined && <option value="">{none}</option>}
        {choices.map(([key, says]) => (
          <option key={key} value={key}>
            {says}
          </option>
        ))}
      </select>
      {hint && (
        <p id={`${id}-about`} class="soft">
          {hint}
        </p>
      )}
    </div>
  )
}
