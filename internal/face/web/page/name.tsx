import type { ComponentChildren } from 'preact'
import { useEffect, useRef } from 'preact/hooks'
import { drop, keepMine, keepTheirs, save, type } from './deeds'
import type { Edit } from './edit'
import type { Difference } from './kinds'
import { FaultText } from './notices'
import { Sentence } from './problems'
import { textOf } from './tree'
import { words } from './words'

// naming tells whether the name of a document is being changed.
export const naming = (edit: Edit | undefined): boolean => edit !== undefined && 'name' in edit.value

// NameEdit is whichever of the two an edit needs.
export function NameEdit({ edit }: { edit: Edit }) {
  return edit.state === 'conflict' ? <Clash edit={edit} /> : <NameField edit={edit} />
}

export function NameField({ edit }: { edit: Edit }) {
  const field = useRef<HTMLInputElement>(null)
  const value = textOf(edit.value.name)
  useEffect(() => {
    if (value !== textOf(edit.was.name)) return // kept from before, not opened just now
    field.current?.select()
    field.current?.focus()
  }, [])
  const about = `about-${edit.id}`
  return (
    <form
      class="edit"
      onSubmit={(event) => {
        event.preventDefault()
        void save(edit.id)
      }}
    >
      <label for={`name-${edit.id}`}>{words.name}</label>
      <input
        ref={field}
        id={`name-${edit.id}`}
        type="text"
        autocomplete="off"
        value={value}
        aria-describedby={about}
        aria-invalid={edit.problems.length > 0}
        onInput={(event) => type(edit.id, event.currentTarget.value)}
        onKeyDown={(event) => {
          if (event.key === 'Escape') drop(edit.id)
        }}
      />
      <div class="buttons">
        <button type="submit" class="strong">
          {words.save}
        </button>
        <button type="button" class="plain" onClick={() => drop(edit.id)}>
          {words.drop}
        </button>
      </div>
      <div id={about} class="about" role="status">
        <Said edit={edit} hint={words.editHint} />
      </div>
      {edit.fault && <FaultText fault={edit.fault} id={`fault-${edit.id}`} />}
    </form>
  )
}

// Said is what the book says about what was typed.
export function Said({ edit, hint }: { edit: Edit; hint?: string }) {
  if (edit.state === 'waiting') return <p class="care">{words.waitingFor}</p>
  const said = edit.trouble ? [edit.trouble] : edit.problems
  if (said.length === 0) return edit.fault || !hint ? null : <p class="soft">{hint}</p>
  return (
    <>
      {said.map((one) => (
        <Sentence key={one.code + one.says} class="care" says={one.says} fix={one.fix} />
      ))}
    </>
  )
}

// Clash shows both sides of a conflict; nothing is written until one is chosen.
export function Clash({ edit }: { edit: Edit }) {
  const head = useRef<HTMLHeadingElement>(null)
  useEffect(() => {
    const at = document.activeElement
    if (!(at instanceof HTMLInputElement || at instanceof HTMLTextAreaElement)) head.current?.focus()
  }, [])
  return (
    <section
      class="clash"
      aria-labelledby={`clash-${edit.id}`}
      onKeyDown={(event) => {
        if (event.key === 'Escape') keepTheirs(edit.id)
      }}
    >
      <h2 ref={head} id={`clash-${edit.id}`} tabIndex={-1}>
        {words.clash(textOf(edit.was.name) || edit.name)}
      </h2>
      <p role="status">{words.clashSays}</p>
      <div class="sides">
        <Side head={words.theirs} edit={edit} pick={(d) => d.theirs}>
          <button type="button" class="plain" onClick={() => keepTheirs(edit.id)}>
            {words.takeTheirs}
          </button>
        </Side>
        <Side head={words.yours} edit={edit} pick={(d) => (d.path in edit.value ? textOf(edit.value[d.path]) : d.yours)}>
          <button type="button" class="plain" onClick={() => void keepMine(edit.id)}>
            {words.takeYours}
          </button>
        </Side>
      </div>
    </section>
  )
}

type SideProps = { head: string; edit: Edit; pick: (d: Difference) => string; children: ComponentChildren }

function Side({ head, edit, pick, children }: SideProps) {
  const alone = edit.differences.length === 1 && edit.differences[0]?.path === 'name' // the heading says it
  return (
    <div class="side">
      <h3>{head}</h3>
      <dl>
        {edit.differences.map((d) => (
          <div key={d.path}>
            <dt class={alone ? 'hidden' : ''}>{words.paths[d.path] ?? d.path}</dt>
            <dd>{pick(d) || words.nothing}</dd>
          </div>
        ))}
      </dl>
      {children}
    </div>
  )
}
