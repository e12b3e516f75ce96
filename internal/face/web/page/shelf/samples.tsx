import { useSignal } from '@preact/signals'
import { valueAt } from '../doc'
import { Choice, Field, Group, idOf, putAt, setNow } from '../field'
import { Text } from '../inputs'
import { LearntLines } from '../lines'
import { keysOf, pathOf, under } from '../tree'
import { words } from '../words'
import { weaves } from '../words/weaves'
import { samples } from './read'

const s = words.shelf

// Samples are the small cloths that were woven of a yarn to be measured, each with what
// it teaches.
export function Samples() {
  const names = keysOf({ samples: valueAt('samples') ?? {} }, 'samples')
  return (
    <Group title={s.samples} says={s.samplesSays}>
      {names.map((name) => (
        <SampleFields key={name} name={name} names={names} />
      ))}
      <AddSample names={names} />
    </Group>
  )
}

const along = ['warp', 'on-loom', 'relaxed', 'washed'] as const
const across = ['reed', 'fell', 'width-relaxed', 'width-washed'] as const

function SampleFields({ name, names }: { name: string; names: string[] }) {
  const at = pathOf('samples', name)
  return (
    <fieldset class="entry sample">
      <legend>{name}</legend>
      <div class="fields">
        <Choice path={under(at, 'weave')} label={words.warp.weave} choices={weaves} none={s.unsaid} />
        <Choice path={under(at, 'wash')} label={words.warp.wash} choices={words.warp.washes as never} none={s.unsaid} />
        <Field path={under(at, 'sett')} label={s.sampleSett} />
        <Field path={under(at, 'picks')} label={s.samplePicks} />
      </div>
      <Sizes at={at} title={s.along} keys={along} />
      <Sizes at={at} title={s.across} keys={across} />
      <Teaches name={name} />
      <SampleName name={name} names={names} />
      <button type="button" class="link" onClick={() => setNow(at, null)}>
        {s.removeSample(name)}
      </button>
    </fieldset>
  )
}

// renamed gives a sample another name, in one change.
function renamed(from: string, to: string): void {
  const value = valueAt(pathOf('samples', from)) ?? {}
  putAt(pathOf('samples', from), null)
  setNow(pathOf('samples', to), value)
}

// SampleName is a way to another name.
function SampleName({ name, names }: { name: string; names: string[] }) {
  const typed = useSignal<string | null>(null)
  if (typed.value === null) {
    return (
      <p>
        <button type="button" class="link" onClick={() => (typed.value = name)}>
          {s.renameSample(name)}
        </button>
      </p>
    )
  }
  const to = typed.value.trim()
  const taken = to !== name && names.includes(to)
  const save = (event: Event) => {
    event.preventDefault()
    if (to === '' || taken) return
    typed.value = null
    if (to !== name) renamed(name, to)
  }
  return (
    <form class="fields" onSubmit={save}>
      <Text id={`name-${idOf(pathOf('samples', name))}`} label={s.sampleName} value={typed.value} set={(text) => (typed.value = text)} {...(taken ? { hint: s.sampleTaken } : {})} />
      <p class="field act">
        <button type="submit" class="plain" aria-disabled={to === '' || taken}>
          {s.saveName}
        </button>
      </p>
    </form>
  )
}

function Sizes({ at, title, keys }: { at: string; title: string; keys: readonly (keyof typeof s.sizes)[] }) {
  return (
    <fieldset class="field table sizes-of">
      <legend>{title}</legend>
      {keys.map((key) => (
        <Field key={key} path={under(at, key)} label={s.sizes[key]} />
      ))}
    </fieldset>
  )
}

// Teaches is what the sample lost between two of its states.
function Teaches({ name }: { name: string }) {
  const learnt = samples.value.find((one) => one.name === name)?.learnt ?? []
  if (learnt.length === 0) return <p class="soft">{s.teachesNone}</p>
  return <LearntLines of={learnt} />
}

function AddSample({ names }: { names: string[] }) {
  const name = useSignal('')
  const taken = names.includes(name.value.trim())
  const add = () => {
    setNow(pathOf('samples', name.value.trim()), {})
    name.value = ''
  }
  return (
    <form
      class="fields"
      onSubmit={(event) => {
        event.preventDefault()
        if (name.value.trim() && !taken) add()
      }}
    >
      <Text id="sample-name" label={s.sampleName} placeholder="2/2 twill, fulled" value={name.value} set={(to) => (name.value = to)} {...(taken ? { hint: s.sampleTaken } : {})} />
      <p class="field act">
        <button type="submit" class="plain" aria-disabled={name.value.trim() === '' || taken}>
          {s.addSample}
        </button>
      </p>
    </form>
  )
}
