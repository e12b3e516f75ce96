import { Set } from '../figure'
import { Select, Text } from '../inputs'
import type { Figure } from '../kinds'
import { FigureLines, Parts } from '../lines'
import { ProblemList } from '../problems'
import { TakeButton } from '../taking/button'
import { Drop } from '../taking/drop'
import { words } from '../words'
import { Copies } from './copies'
import { begin, form, type Kind, kinds, refused, say, shelves } from './form'

const n = words.new_

// NewPage begins a warp: from a kind of piece, from a warp there is, or from a file.
export function NewPage() {
  return (
    <>
      <h1>{n.title}</h1>
      <Drop into="book" />
      <FromKind />
      <div class="columns others">
        <Copies />
        <FromFile />
      </div>
    </>
  )
}

function FromKind() {
  const all = kinds.value
  const chosen = all?.find((kind) => kind.id === form.value.kind) ?? all?.[0]
  return (
    <form
      class="columns from-kind"
      onSubmit={(event) => {
        event.preventDefault()
        if (chosen) void begin(chosen.id)
      }}
    >
      <fieldset>
        <legend class="heading">{n.kind}</legend>
        <UnitsChoice />
        {all ? (
          <ul class="kinds" role="list">
            {all.map((kind) => (
              <KindRow key={kind.id} kind={kind} chosen={kind === chosen} />
            ))}
          </ul>
        ) : (
          <p class="soft">{words.reading}</p>
        )}
      </fieldset>
      <div class="answers">
        {chosen && <Chosen kind={chosen} />}
      </div>
    </form>
  )
}

function UnitsChoice() {
  return (
    <fieldset class="ticks">
      <legend class="hidden">{words.units}</legend>
      {(['metric', 'imperial'] as const).map((units) => (
        <label key={units}>
          <input type="radio" name="units" checked={form.value.units === units} onChange={() => say({ units })} /> {n.units[units]}
        </label>
      ))}
    </fieldset>
  )
}

function KindRow({ kind, chosen }: { kind: Kind; chosen: boolean }) {
  const piece = kind.pieces[0]
  return (
    <li>
      <label class="figure">
        <input type="radio" name="kind" value={kind.id} checked={chosen} onChange={() => say({ kind: kind.id })} />
        <Parts says={kind.name}>{piece && <Set text={n.size(piece.length, piece.width)} />}</Parts>
      </label>
    </li>
  )
}

// usualOf are the usual figures of a kind, each with the range that is usual.
const usualOf = (kind: Kind): Figure[] =>
  kind.usual.filter((figure) => figure.id !== 'source').map((figure) => (figure.note ? { ...figure, note: words.warp.usually(figure.note) } : figure))

function Chosen({ kind }: { kind: Kind }) {
  const now = form.value
  return (
    <>
      <h2 class="sentence">{kind.name}</h2>
      <p class="soft sentence">{kind.says}</p>
      <FigureLines of={usualOf(kind)} />
      <p class="soft">{n.usualSays(kind.usual.find((figure) => figure.id === 'source')?.value ?? '')}</p>
      <div class="fields">
        <Text id="new-name" label={n.name} placeholder={kind.name} value={now.name} set={(name) => say({ name })} />
        <Text id="new-count" label={n.count} number placeholder={String(kind.pieces[0]?.count ?? 1)} value={now.count} set={(count) => say({ count })} />
        {(['yarn', 'loom', 'draft'] as const).map((part) => (
          <Select key={part} id={`new-${part}`} label={n.part[part]} none={n.later} value={now[part]} choices={shelves.value[part].map((one) => [String(one.id), one.name])} set={(id) => say({ [part]: id })} />
        ))}
      </div>
      <div class="cares" role="status">
        <ProblemList of={refused.value} />
      </div>
      <button type="submit" class="strong">
        {n.begin}
      </button>
    </>
  )
}

// FromFile takes in files.
function FromFile() {
  return (
    <section class="group">
      <h2>{n.file}</h2>
      <p class="soft">{n.fileSays}</p>
      <p class="buttons">
        <TakeButton into="book" label={words.taking.choose} />
      </p>
    </section>
  )
}
