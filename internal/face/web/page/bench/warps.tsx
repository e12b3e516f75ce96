import { signal } from '@preact/signals'
import { useEffect } from 'preact/hooks'
import { CardName, Figures } from '../card'
import type { Edit } from '../edit'
import type { Warp } from '../kinds'
import { Link } from '../link'
import { NameEdit, naming } from '../name'
import { type Stage, stages } from '../place'
import { More } from '../search'
import { edits } from '../state'
import { textOf } from '../tree'
import { words } from '../words'
import { hand } from './hand'

// The first warps are drawn before the others, which come so many milliseconds later:
// setting a whole lot takes longer than reading it.
const atOnce = 12
const later = 50
const drawn = signal(false)

export function WarpList() {
  const all = hand.items.value
  useEffect(() => {
    if (all !== null) setTimeout(() => (drawn.value = true), later)
  }, [all !== null])
  if (all === null) return <p class="soft">{words.reading}</p>
  if (all.length === 0) return <NoneFound />
  return (
    <>
      <ol class="warps" id="warps" role="list">
        {(drawn.value ? all : all.slice(0, atOnce)).map((warp) => (
          <WarpItem key={warp.id} warp={warp} edit={edits.value[warp.id]} />
        ))}
      </ol>
      <More list={hand} />
    </>
  )
}

function NoneFound() {
  return (
    <p class="none" id="warps">
      {words.noneFound(hand.query.value.words ?? '')}{' '}
      <button type="button" class="link" onClick={() => hand.find({})}>
        {words.showAll}
      </button>
    </p>
  )
}

const stageOf = (warp: Warp): Stage => stages.find((s) => s === warp.next?.stage) ?? 'piece'

function WarpItem({ warp, edit }: { warp: Warp; edit: Edit | undefined }) {
  return (
    <li class="warp">
      <img class="cloth" src={`/api/documents/${warp.id}/picture?of=cloth&v=${warp.version}`} alt="" width="150" height="170" loading="lazy" />
      <div class="what">
        <CardName of={warp} edit={edit} to={{ page: 'warp', id: warp.id, stage: stageOf(warp) }} />
        {warp.cloth && <p class="soft">{warp.cloth}</p>}
        <p class="stage">
          {warp.stage}
          {warp.problems > 0 && !warp.next && <span class="care">{words.problems(warp.problems)}</span>}
        </p>
        {warp.progress && <progress value={warp.progress.done} max={warp.progress.of} aria-label={words.progressOf(warp.name)} />}
        {warp.next && (
          <p class="next">
            <span>{words.next} </span>
            <Link to={{ page: 'warp', id: warp.id, stage: stageOf(warp) }} label={`${warp.next.says}, ${warp.name}`}>
              {warp.next.says}
            </Link>
          </p>
        )}
        <Figures name={warp.name} figures={warp.figures} />
        <p class="soft">
          {warp.demo && <span class="demo">{words.fromDemo}</span>}
          <time dateTime={warp.changed}>{words.changed(warp.changed)}</time>
        </p>
      </div>
    </li>
  )
}

// StrayItem is an edit without its warp in the list.
export function StrayItem({ edit }: { edit: Edit }) {
  return (
    <div class="stray">
      <p class="soft">{textOf(edit.was.name) || edit.name}</p>
      {naming(edit) || edit.state === 'conflict' ? <NameEdit edit={edit} /> : <Link to={{ page: 'warp', id: edit.id, stage: 'piece' }}>{words.goOn}</Link>}
    </div>
  )
}
