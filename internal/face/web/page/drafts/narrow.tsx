import { Select, Text } from '../inputs'
import { words } from '../words'
import { drafts } from './shelf'

const w = words.draft

const numbers = [
  ['shafts', 'mostShafts'],
  ['treadles', 'mostTreadles'],
  ['float', 'mostFloat'],
] as const

// isNarrow tells whether only some drafts are asked for, apart from words.
export const isNarrow = (): boolean => Object.entries(drafts.query.value).some(([name, value]) => name !== 'words' && value !== '')

const ask = (name: string, value: string): void => drafts.find({ ...drafts.query.value, [name]: value })

// Narrow asks for drafts that a loom can weave, and for those of one weave.
export function Narrow() {
  const now = drafts.query.value
  return (
    <fieldset class="narrow">
      <legend class="hidden">{w.narrow}</legend>
      <Select id="narrow-weave" label={w.weave} none={w.anyWeave} value={now.weave ?? ''} choices={Object.entries(w.weaves)} set={(to) => ask('weave', to)} />
      {numbers.map(([name, label]) => (
        <Text key={name} id={`narrow-${name}`} class="small-field" label={w[label]} number value={now[name] ?? ''} set={(to) => ask(name, to.replace(/\D/g, '').slice(0, 4))} />
      ))}
    </fieldset>
  )
}
