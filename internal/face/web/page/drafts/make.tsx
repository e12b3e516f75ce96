import { useSignal } from '@preact/signals'
import { Group } from '../field'
import { Select, Text } from '../inputs'
import { Sentence } from '../problems'
import { words } from '../words'
import { cannot, changes, chosen, choose, judged, keepChanges } from './open'

const w = words.draft

// Make tries changes of the draft, and writes those that are kept.
export function Make() {
  if (judged.value?.figures.length === 0) return null
  return (
    <Group title={w.make} says={w.makeSays}>
      <ChooseChange />
      <Chosen />
    </Group>
  )
}

function ChooseChange() {
  const name = useSignal('')
  const how = useSignal('')
  const change = changes.value.find((one) => one.name === name.value)
  const take = (to: string) => {
    name.value = to
    how.value = changes.value.find((one) => one.name === to)?.takes ?? ''
  }
  const add = () => {
    if (!change) return
    choose([...chosen.value, change.takes ? `${change.name}=${how.value.trim()}` : change.name])
    take('')
  }
  return (
    <form
      class="choose-change"
      onSubmit={(event) => {
        event.preventDefault()
        add()
      }}
    >
      <Select id="change" label={w.change} none={w.chooseChange} value={name.value} choices={changes.value.map((one) => [one.name, one.says])} set={take} />
      {change?.takes && <Text id="change-how" class="how" label={`${w.how}, ${w.for(change.takes)}`} value={how.value} set={(to) => (how.value = to)} />}
      <button type="submit" class="plain" aria-disabled={!change}>
        {w.add}
      </button>
    </form>
  )
}

// saysOf is a change in words, with how where it takes something.
function saysOf(change: string): string {
  const [name, ...how] = change.split('=')
  const says = changes.value.find((one) => one.name === name)?.says ?? change
  return how.length > 0 ? `${says}: ${how.join('=')}` : says
}

function Chosen() {
  const all = chosen.value
  if (all.length === 0) return null
  return (
    <div role="group" aria-label={w.chosen}>
      <p class="soft">{w.chosen}</p>
      <ol class="chosen" role="list">
        {all.map((one, i) => (
          <li key={`${i} ${one}`}>
            <span class="sentence">{saysOf(one)}</span>
            <button type="button" class="link" aria-label={w.without(saysOf(one))} onClick={() => choose(all.filter((_, j) => j !== i))}>
              {w.takeOff}
            </button>
          </li>
        ))}
      </ol>
      {cannot.value && <Sentence class="care" role="alert" says={cannot.value.says} fix={cannot.value.fix} />}
      <p class="buttons">
        <button type="button" class="plain" aria-disabled={cannot.value !== null} onClick={() => cannot.value || void keepChanges()}>
          {w.keep}
        </button>
        <button type="button" class="link" onClick={() => choose([])}>
          {w.dropAll}
        </button>
      </p>
    </div>
  )
}
