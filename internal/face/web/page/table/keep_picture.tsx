import { useSignal } from '@preact/signals'
import { docName } from '../doc'
import { words } from '../words'
import { docId, summary } from './facts'
import { lookNow } from './look_now'
import { printSeen } from './print_seen'
import { seenPicture } from './seen_picture'
import { asAsked } from './session'
import { arrangement, cells, seeing, shownTable, toScale, view } from './sight'

const w = words.table

// dense is how many dots a picture has for each of the screen's.
const dense = 2

const seen = (): HTMLCanvasElement | null => {
  const [of, now, box] = [shownTable.peek(), view.peek(), document.querySelector('.draft-table')]
  return of && now && box ? seenPicture(of, now, lookNow(box), dense) : null
}

const pngOf = (canvas: HTMLCanvasElement | null): Promise<Blob | null> => new Promise((done) => (canvas ? canvas.toBlob(done, 'image/png') : done(null)))

// lookQuery is how the draft is drawn here, as the server is asked for it. What it cannot draw,
// as other colour vision, is left to the picture of what is seen.
function lookQuery(): string {
  const now = arrangement.value
  const flags = { drawdown: now.alone || now.back, back: now.back, below: now.below, 'tie-up-left': now.left, 'from-right': now.fromRight, upwards: now.upwards, grey: seeing.value === 'grey', 'to-scale': toScale.value }
  const set = Object.entries(flags).filter(([, is]) => is).map(([name]) => name)
  return [asAsked(), `cells=${cells.value === 'marks' ? 'filled' : cells.value}`, ...set].join('&')
}

// TakeAlong is the draft as files, drawn as it is drawn here, and what is in sight of it as a
// picture.
export function TakeAlong() {
  const said = useSignal('')
  if (docId.value === undefined) return null
  const at = `/api/documents/${docId.value}/draft`
  const copy = async (): Promise<void> => {
    try {
      const blob = await pngOf(seen())
      if (!blob) throw new Error('no picture')
      await navigator.clipboard.write([new ClipboardItem({ 'image/png': blob })])
      said.value = w.copied
    } catch {
      said.value = w.notCopied
    }
  }
  const save = async (): Promise<void> => {
    const blob = await pngOf(seen())
    if (blob) keepFile(blob, `${docName.peek() ?? w.title}.png`)
  }
  return (
    <details>
      <summary>{w.take}</summary>
      <p class="ways">
        {(['wif', 'svg', 'png', 'pdf'] as const).map((form) => (
          <a key={form} href={`${at}.${form}?${form === 'wif' ? asAsked() : lookQuery()}`} download>
            {w.forms[form]}
          </a>
        ))}
      </p>
      {arrangement.value.back && !arrangement.value.alone && <p class="soft">{w.backAlone}</p>}
      <p class="ways">
        <span class="soft">{w.seen}</span>
        <button type="button" class="link" onClick={() => void copy()}>
          {w.copySeen}
        </button>
        <button type="button" class="link" onClick={() => void save()}>
          {w.saveSeen}
        </button>
        <button type="button" class="link" onClick={() => printSeen(seen(), docName.peek() ?? w.title, summary.peek())}>
          {w.printSeen}
        </button>
      </p>
      <p class="soft" role="status">
        {said.value}
      </p>
    </details>
  )
}

// keepFile has the browser keep a file that the page made.
function keepFile(blob: Blob, name: string): void {
  const link = document.createElement('a')
  link.href = URL.createObjectURL(blob)
  link.download = name
  link.click()
  setTimeout(() => URL.revokeObjectURL(link.href), 1000)
}
