import { act } from '../deeds'
import { doc, numbers, valueAt } from '../doc'
import { Field, Group } from '../field'
import { DrawnBoard } from '../shelf/drawn_board'
import { LoomFields, Winding } from '../shelf/loom_fields'
import { textOf } from '../tree'
import { words } from '../words'
import { FromShelf, FromShelfChoice } from './from_shelf'
import { Lines } from './lines'
import { SheetsToPrint } from './sheets'
import { shelfLooms } from './shelf'

const w = words.warp

// Dress is the loom, the winding, and the sheets to dress it by.
export function Dress() {
  return (
    <>
      <SheetsToPrint />
      <div class="columns">
        <div>
          <Loom />
          <Winding />
          <Begin />
        </div>
        <div class="answers">
          <Board />
          <Lines title={w.reckoning} sections={['winding', 'raddle', 'sections', 'reed', 'heddles']} />
        </div>
      </div>
    </>
  )
}

function Loom() {
  const name = textOf(valueAt('loom.name'))
  return (
    <Group title={w.loom}>
      <FromShelf part="loom" name={name || w.loom} />
      <FromShelfChoice id="shelf-loom" label={w.loomFrom} none={w.loomChoose} shelf={shelfLooms.value} partOf={() => 'loom'} />
      <div class="fields">
        <Field path="warp.reed" label={w.reed} hint={w.reedHint} />
        <Field path="warp.sleying" label={w.sleying} hint={w.sleyingHint} />
      </div>
      <details>
        <summary>{words.shelf.loomMore}</summary>
        <LoomFields before="loom" />
      </details>
    </Group>
  )
}

// Board has the path of this warp on it.
function Board() {
  const wound = numbers.value?.sections.some((s) => s.id === 'winding')
  return wound ? <DrawnBoard title={w.path} alt={w.path} /> : null
}

// Begin is where planning ends.
function Begin() {
  const now = doc.value
  if (!now) return null
  return (
    <Group title={w.begin} says={now.started ? w.begun : w.beginSays}>
      <p class="aside">{w.ratchet}</p>
      {!now.started && (
        <p class="buttons">
          <button type="button" class="plain" onClick={() => void act(now, 'start')}>
            {w.beginNow}
          </button>
        </p>
      )}
    </Group>
  )
}

