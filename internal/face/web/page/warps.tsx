import { useEffect, useRef } from 'preact/hooks'
import { rename } from './deeds'
import type { Edit } from './edit'
import type { Figure, Warp } from './kinds'
import { find, more } from './list'
import { Clash, NameEdit, NameField } from './name'
import { edits, next, search, total, warps } from './state'
import { words } from './words'

export function WarpList() {
  const all = warps.value
  if (all === null) return <p class="soft">{words.reading}</p>
  if (all.length === 0) return <NoneFound />
  return (
    <>
      <ol class="warps" id="warps" tabIndex={-1} role="list">
        {all.map((warp) => (
          <WarpItem key={warp.id} warp={warp} edit={edits.value[warp.id]} />
        ))}
      </ol>
      {next.value !== '' && (
        <p class="more">
          <button type="button" class="plain" onClick={() => void more()}>
            {words.more}
          </button>
          <span class="soft">{words.shownOf(all.length, total.value)}</span>
        </p>
      )}
    </>
  )
}

function NoneFound() {
  return (
    <p class="none" id="warps">
      {words.noneFound(search.value)}{' '}
      <button type="button" class="link" onClick={() => find('')}>
        {words.showAll}
      </button>
    </p>
  )
}

function WarpItem({ warp, edit }: { warp: Warp; edit: Edit | undefined }) {
  const button = useRef<HTMLButtonElement>(null)
  const open = edit !== undefined
  const wasOpen = useRef(open)
  useEffect(() => {
    // The field that had the keyboard is gone: go on where it was opened.
    if (wasOpen.current && !open && document.activeElement === document.body) button.current?.focus()
    wasOpen.current = open
  }, [open])
  return (
    <li class="warp">
      {edit?.state === 'conflict' && <Clash edit={edit} />}
      <div class="what">
        {edit && edit.state !== 'conflict' ? (
          <NameField edit={edit} />
        ) : (
          <div class="name">
            <h2>{warp.name}</h2>
            {open || (
              <button ref={button} type="button" class="link" aria-label={words.renameOf(warp.name)} onClick={() => rename(warp)}>
                {words.rename}
              </button>
            )}
          </div>
        )}
        <p class="stage">{warp.stage}</p>
        {warp.problems > 0 && <p class="care">{words.problems(warp.problems)}</p>}
        <p class="soft">
          {warp.demo && <span class="demo">{words.fromDemo}</span>}
          <time dateTime={warp.changed}>{words.changed(warp.changed)}</time>
        </p>
      </div>
      <Figures name={warp.name} figures={warp.figures} />
    </li>
  )
}

// Figures says its roles aloud: laid out in two columns a table would lose them.
function Figures({ name, figures }: { name: string; figures: Figure[] }) {
  return (
    <table class="figures" role="table" aria-label={words.figuresOf(name)}>
      <tbody role="rowgroup">
        {figures.map((figure) => (
          <tr key={figure.id} role="row">
            <th scope="row" role="rowheader">
              {figure.says}
            </th>
            <td role="cell">{figure.value}</td>
          </tr>
        ))}
      </tbody>
    </table>
  )
}

// StrayItem is an edit without its warp in the list.
export function StrayItem({ edit }: { edit: Edit }) {
  return (
    <div class="stray">
      <p class="soft">{edit.was}</p>
      <NameEdit edit={edit} />
    </div>
  )
}
