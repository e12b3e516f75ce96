import { useSignal } from '@preact/signals'
import { useEffect, useRef } from 'preact/hooks'
import { stand } from '../heard'
import { Text } from '../inputs'
import type { Answer } from '../kinds'
import { freshId, windowId } from '../window'
import { words } from '../words'
import { after } from './logged'
import { preview, type Upload, upload } from './upload'

const w = words.loomsideLog

// slowly is after how long it is shown that something takes its time, in milliseconds.
const slowly = 500

type Props = { id: number; place: number }

// Photograph takes a picture by the camera of a phone, or a file, into the log. It needs
// none of what browsers keep for secure pages.
export function Photograph({ id, place }: Props) {
  const field = useRef<HTMLInputElement>(null)
  const file = useSignal<File | null>(null)
  const chosen = () => {
    file.value = field.current?.files?.[0] ?? null
    if (field.current) field.current.value = '' // the same one may be chosen again
  }
  return (
    <>
      <input ref={field} hidden type="file" id="photograph" accept="image/*" capture="environment" aria-label={w.choose} onChange={chosen} />
      <button type="button" class="plain" onClick={() => field.current?.click()}>
        {w.photograph}
      </button>
      {file.value && <Chosen key={`${file.value.name}-${file.value.lastModified}`} id={id} place={place} file={file.value} away={() => (file.value = null)} />}
    </>
  )
}

// Chosen is a picture that is not sent yet: what it shows, and what became of sending it.
function Chosen({ id, place, file, away }: Props & { file: File; away: () => void }) {
  const mark = useRef(freshId()) // sent again it is the same one
  const caption = useSignal('')
  const wrong = useSignal('')
  const on = useSignal<Upload | null>(null)
  const share = useSignal(0)
  useEffect(() => () => on.peek()?.stop(), [])
  const send = async () => {
    if (on.value) return
    wrong.value = ''
    share.value = 0
    const asked = new URLSearchParams({ id: mark.current, window: await windowId, note: caption.value, place: String(place) })
    const sent = upload(`/api/documents/${id}/photographs?${asked}`, file, (is) => (share.value = is))
    on.value = sent
    const answer = await sent.answer
    on.value = null
    stand(answer)
    wrong.value = whyNot(answer)
    if (answer.is !== 'done') return
    away()
    await after(id)
  }
  return (
    <form
      class="loom-photograph"
      onSubmit={(event) => {
        event.preventDefault()
        void send()
      }}
    >
      <Preview of={file} />
      <Text id="caption" class="wide" label={w.caption} placeholder={w.captionHint} value={caption.value} set={(to) => (caption.value = to)} />
      <p class="buttons" role="alert">
        {wrong.value}
      </p>
      <p class="buttons">
        <button type="submit" class="plain" aria-disabled={on.value !== null}>
          {wrong.value ? w.sendAgain : w.keepIt}
        </button>
        <button type="button" class="link" onClick={() => (on.value ? on.value.stop() : away())}>
          {on.value ? w.stopSending : w.putAway}
        </button>
      </p>
      {on.value && <Sending share={share.value} />}
    </form>
  )
}

// whyNot says why a picture was not taken, and what to do.
function whyNot(answer: Answer<unknown>): string {
  switch (answer.is) {
    case 'done':
      return ''
    case 'problems':
      return answer.problems.map((p) => `${sentence(p.says)} ${p.fix ? sentence(p.fix) : ''}`).join(' ')
    case 'trouble':
      return `${sentence(answer.trouble.says)} ${answer.trouble.fix ? sentence(answer.trouble.fix) : ''}`
    case 'fault':
      return answer.fault.says
    default:
      return w.notSent
  }
}

const sentence = (text: string): string => `${text.charAt(0).toUpperCase()}${text.slice(1)}.`

// Preview shows a picture that is only here.
function Preview({ of }: { of: File }) {
  const canvas = useRef<HTMLCanvasElement>(null)
  const cannot = useSignal(false)
  useEffect(() => {
    if (canvas.current) void preview(of, canvas.current).then((can) => (cannot.value = !can))
  }, [of])
  return (
    <>
      <canvas ref={canvas} class="preview" role="img" aria-label={w.chosen} hidden={cannot.value} />
      {cannot.value && <p class="soft">{w.noPreview}</p>}
    </>
  )
}

// Sending shows how much has gone, once it takes its time.
function Sending({ share }: { share: number }) {
  const slow = useSignal(false)
  useEffect(() => {
    const timer = window.setTimeout(() => (slow.value = true), slowly)
    return () => window.clearTimeout(timer)
  }, [])
  if (!slow.value) return null
  return <progress aria-label={w.sending} max={1} value={share} />
}
