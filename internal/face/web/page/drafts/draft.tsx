import { Field, Group } from '../field'
import { Framed } from '../framed'
import { words } from '../words'
import { ClothOf, Drawing } from './drawing'
import { Figures, Told } from './known'
import { Make } from './make'
import { Begin, TakeAlong } from './onward'

const w = words.draft

// DraftPage is one draft of the shelf.
export function DraftPage() {
  return (
    <Framed kind="draft">
      <div class="columns wide-left">
        <div>
          <Drawing />
          <Begin />
          <Make />
          <Group title={w.note}>
            <Field path="note" label={w.noteLabel} hint={w.noteHint} wide />
          </Group>
          <TakeAlong />
        </div>
        <div>
          <ClothOf />
          <Figures />
          <Told />
        </div>
      </div>
    </Framed>
  )
}
