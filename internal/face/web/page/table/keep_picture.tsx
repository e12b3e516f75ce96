import { useSignal } from '@preact/signals'
import { words } from '../words'
import { docId } from './facts'

const w = words.table

// TakeAlong is the draft as files, and what is seen as a picture.
export function TakeAlong() {
  const said = useSignal('')
  if (docId.value === undefined) return null
  const at = `/api/documents/${docId.value}/draft`
  const copy = async (): Promise<void> => {
    const canvas = document.querySelector<HTMLCanvasElement>('.draft-table canvas')
    const blob = canvas && (await new Promise<Blob | null>((done) => canvas.toBlob(done, 'image/png')))
    try {
      if (!blob) throw new Error('no picture')
      await navigator.clipboard.write([new ClipboardItem({ 'image/png': blob })])
      said.value = w.copied
    } catch {
      said.value = w.notCopied
    }
  }
  return (
    <details>
      <summary>{w.take}</summary>
      <p class="ways">
        {(['wif', 'svg', 'png', 'pdf'] as const).map((form) => (
          <a key={form} href={`${at}.${form}`} download>
            {w.forms[form]}
          </a>
        ))}
        <button type="button" class="link" onClick={() => void copy()}>
          {w.copySeen}
        </button>
      </p>
      <p class="soft" role="status">
        {said.value}
      </p>
    </details>
  )
}
