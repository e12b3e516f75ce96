import { useEffect } from 'preact/hooks'
import type { Kind } from '../document'
import { docName } from '../doc'
import { Link } from '../link'
import type { Place } from '../place'
import { Problems } from '../problems'
import { strokes } from '../state'
import { words } from '../words'
import { FromShelf } from '../warp/from_shelf'
import { readBeside } from './beside'
import { Canvas } from './canvas'
import { gone, hasTable, summary, version } from './facts'
import { Findings } from './findings'
import { TakeAlong } from './keep_picture'
import { Looks } from './looks'
import { AddDye, Go, Whole } from './more'
import { Overview } from './overview'
import { fixed, problems, setWhole, stale, whole } from './session'
import { forget } from './sight'
import { Stretch } from './stretch'
import { Dyes, More, Tools } from './tools'

const w = words.table

// TablePage is a draft that is drawn on: of the shelf, or of a warp.
export function TablePage({ of, id }: { of: Kind; id: number }) {
  useEffect(() => {
    forget()
    return forget
  }, [id])
  if (gone.value) return <p>{words.document_.lostSays}</p>
  const back: Place = of === 'warp' ? { page: 'warp', id, stage: 'cloth' } : { page: 'draft', id }
  return (
    <>
      <p class="back">
        <Link to={back}>{w.back[of === 'warp' ? 'warp' : 'draft']}</Link>
      </p>
      <div class="title-row">
        <h1>{docName.value ?? w.title}</h1>
        <Summary />
      </div>
      <Standing warp={of === 'warp'} />
      {hasTable.value && <Drawing of={of} />}
      <Beside of={of} id={id} />
    </>
  )
}

const Summary = () => <span class="soft">{summary.value}</span>

// Beside reads what stands beside the table, anew when that has changed.
function Beside({ of, id }: { of: Kind; id: number }) {
  useEffect(() => readBeside(of, id), [of, id, version.value])
  return null
}

// Standing is what there is to say before anything is drawn.
function Standing({ warp }: { warp: boolean }) {
  return (
    <>
      {warp && (
        <p class="buttons">
          <button type="button" class="plain" aria-pressed={!whole.value} onClick={() => setWhole(false)}>
            {w.written}
          </button>
          <button type="button" class="plain" aria-pressed={whole.value} onClick={() => setWhole(true)}>
            {w.whole}
          </button>
          <span class="soft">{whole.value ? w.wholeSays : w.writtenSays}</span>
        </p>
      )}
      {fixed.value && <p class="aside">{w.fixed[fixed.value] ?? fixed.value}</p>}
      {!hasTable.value && <Problems of={problems.value} />}
    </>
  )
}

// Told is what there is to say of what was drawn last. It lies over the drawing, so that this
// does not move away under the hand.
function Told() {
  return (
    <div class="table-told">
      {stale.value && (
        <p class="care" role="alert">
          {w.stale}
        </p>
      )}
      <div role="status">
        {strokes.value > 1 && <p class="soft">{w.waiting(strokes.value)}</p>}
        <Problems of={problems.value} />
      </div>
    </div>
  )
}

function Drawing({ of }: { of: Kind }) {
  return (
    <div class="table-page">
      <div class="table-main">
        <Tools />
        <div class="table-box">
          <Canvas />
          <Told />
        </div>
        <p id="table-keys" class="soft">
          {w.keys}
        </p>
        <Go />
        <Dyes />
        <AddDye />
        <More />
        <Stretch />
        <Whole />
      </div>
      <div class="table-side">
        <Overview />
        <Findings shelf={of === 'draft'} />
        <Looks />
        <TakeAlong />
        {of === 'warp' && <FromShelf part="draft" name={words.warp.draft} />}
      </div>
    </div>
  )
}
