import { useEffect, useRef } from 'preact/hooks'
import { rename } from './deeds'
import type { Edit } from './edit'
import type { Figure } from './kinds'
import { Set } from './figure'
import { Link } from './link'
import { Clash, NameField, naming } from './name'
import type { Place } from './place'
import { words } from './words'

type Named = { id: number; name: string; version: number }

// CardName is the name of a document in a list: a link to it, and a way to change it.
export function CardName({ of, edit, to }: { of: Named; edit: Edit | undefined; to: Place }) {
  const button = useRef<HTMLButtonElement>(null)
  const open = naming(edit)
  const wasOpen = useRef(open)
  useEffect(() => {
    // The field that had the keyboard is gone: go on where it was opened.
    if (wasOpen.current && !open && document.activeElement === document.body) button.current?.focus()
    wasOpen.current = open
  }, [open])
  if (edit?.state === 'conflict') return <Clash edit={edit} />
  if (edit && open) return <NameField edit={edit} />
  return (
    <div class="name">
      <h2>
        <Link to={to} class="quiet">
          {of.name}
        </Link>
      </h2>
      <button ref={button} type="button" class="link" aria-label={words.renameOf(of.name)} onClick={() => rename(of)}>
        {words.rename}
      </button>
    </div>
  )
}

// Figures says its roles aloud: laid out in columns a table would lose them.
export function Figures({ name, figures }: { name: string; figures: Figure[] }) {
  return (
    <table class="figures" role="table" aria-label={words.figuresOf(name)}>
      <tbody role="rowgroup">
        {figures.map((figure) => (
          <tr key={figure.id} role="row">
            <th scope="row" role="rowheader">
              {figure.says}
            </th>
            <td role="cell">
              <Set text={figure.value} />
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  )
}
