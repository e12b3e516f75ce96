import { save } from '../deeds'
import { valueAt } from '../doc'
import { doc } from '../doc'
import { Field, idOf, problemsAt, putAt, setNow } from '../field'
import { Select } from '../inputs'
import { Problems } from '../problems'
import { textOf } from '../tree'
import { words } from '../words'
import { firstBoard, nextPeg, pegOf, pegText } from './pegs'

const s = words.shelf
const w = words.warp

const said = (path: string): boolean => (valueAt(path) ?? null) !== null

// boardNow is what warps are wound on.
const boardNow = (): string => (said('winding.pegs') ? 'pegs' : said('winding.mill') ? 'mill' : said('winding.board') ? 'usual' : '')

function choose(to: string): void {
  for (const [key, path] of [['usual', 'winding.board'], ['pegs', 'winding.pegs'], ['mill', 'winding.mill']] as const) {
    if (key !== to && said(path)) putAt(path, null)
  }
  if (to === 'usual') putAt('winding.board', 'usual')
  if (to === 'pegs') putAt('winding.pegs', [...firstBoard])
  if (to === 'mill') putAt('winding.mill', '2 yd')
  if (doc.value) void save(doc.value.id)
}

// BoardFields say what warps are wound on: a board, as is usual or of one's own pegs, or
// a mill.
export function BoardFields() {
  const now = boardNow()
  return (
    <>
      <div class="fields">
        <Select id="board" label={s.woundOn} value={now} none={s.unsaid} choices={s.boards} set={choose} {...(now === 'usual' ? { hint: s.boardUsualHint } : {})} />
        {now === 'mill' && <Field path="winding.mill" label={w.mill} />}
      </div>
      {now === 'pegs' && <Pegs />}
    </>
  )
}

const at = (i: number): string => `winding.pegs[${i}]`

function Pegs() {
  const list = valueAt('winding.pegs')
  const pegs = Array.isArray(list) ? list.map(textOf) : []
  return (
    <fieldset class="pegs">
      <legend>{s.pegs}</legend>
      <p class="soft">{s.pegsSays}</p>
      <ol role="list">
        <li class="heads" aria-hidden="true">
          <span>{s.pegName}</span>
          <span>{s.pegRight}</span>
          <span>{s.pegDown}</span>
        </li>
        {pegs.map((_, i) => (
          <PegRow key={i} i={i} />
        ))}
      </ol>
      <Problems of={problemsAt('winding.pegs').filter((p) => p.path === 'winding.pegs')} />
      <button type="button" class="plain" onClick={() => setNow(at(pegs.length), nextPeg(pegs))}>
        {s.addPeg}
      </button>
    </fieldset>
  )
}

function PegRow({ i }: { i: number }) {
  const peg = pegOf(textOf(valueAt(at(i))))
  const wrong = problemsAt(at(i))
  const part = (key: keyof typeof peg, label: string) => (
    <input
      id={idOf(`${at(i)}.${key}`)}
      type="text"
      autocomplete="off"
      spellcheck={false}
      aria-label={s.pegPart(i + 1, label)}
      aria-invalid={wrong.some((p) => p.severity === 'error')}
      value={peg[key]}
      onInput={(event) => putAt(at(i), pegText({ ...peg, [key]: event.currentTarget.value }))}
      onChange={() => doc.value && void save(doc.value.id)}
    />
  )
  return (
    <li>
      {part('name', s.pegName)}
      {part('right', s.pegRight)}
      {part('down', s.pegDown)}
      <button type="button" class="link" aria-label={s.removePeg(i + 1)} onClick={() => setNow(at(i), null)}>
        {words.remove}
      </button>
      {wrong.length > 0 && (
        <div class="about">
          <Problems of={wrong} />
        </div>
      )}
    </li>
  )
}
