import { useEffect } from 'preact/hooks'
import { doc, lost } from '../doc'
import type { Kind } from '../document'
import { Link } from '../link'
import type { Place } from '../place'
import { ProblemList } from '../problems'
import { strokes } from '../state'
import { words } from '../words'
import { Canvas } from './canvas'
import { picksOf } from './cloth'
import { Findings } from './findings'
import { TakeAlong } from './keep_picture'
import { Looks } from './looks'
import { AddDye, Go, Whole } from './more'
import { Overview } from './overview'
import { fixed, problems, setWhole, stale, table, whole } from './session'
import { forget } from './sight'
import { Dyes, More, Stretch, Tools } from './tools'

const w = words.table

// TablePage is a draft that is drawn on: of the shelf, or of a warp.
export function TablePage({ of, id }: { of: Kind; id: number }) {
  useEffect(() => {
    forget()
    return forget
  }, [id])
  const now = doc.value
  if (lost.value || now?.removed) return <p>{words.document_.lostSays}</p>
  const back: Place = of === 'warp' ? { page: 'warp', id, stage: 'cloth' } : { page: 'draft', id }
  return (
    <>
      <p class="back">
        <Link to={back}>{w.back[of === 'warp' ? 'warp' : 'draft']}</Link>
      </p>
      <div class="title-row">
        <h1>{now?.name ?? w.title}</h1>
        <span class="soft">{table.value ? w.summary(table.value.threading.length, picksOf(table.value), table.value.shafts, table.value.treadles) : ''}</span>
      </div>
      <Standing warp={of === 'warp'} />
      {table.value && <Drawing />}
    </>
  )
}

// Standing is what there is to say before anything is drawn, and of what was drawn last.
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
      {stale.value && (
        <p class="care" role="alert">
          {w.stale}
        </p>
      )}
      <div role="status">
        {strokes.value > 1 && <p class="soft">{w.waiting(strokes.value)}</p>}
        <ProblemList of={problems.value} />
      </div>
    </>
  )
}

function Drawing() {
  return (
    <div class="table-page">
      <div class="table-main">
        <Tools />
        <Canvas />
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
        <Findings />
        <Looks />
        <TakeAlong />
      </div>
    </div>
  )
}
