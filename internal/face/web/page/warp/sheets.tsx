import { signal } from '@preact/signals'
import { askSheets } from '../ask'
import { doc, numbers } from '../doc'
import { Select } from '../inputs'
import { keep, kept } from '../keep'
import type { Sheet, Sheets } from '../kinds_doc'
import { words } from '../words'

const w = words.warp

const sheets = signal<Sheets | null>(null)
const paper = signal(kept('paper', 'a4'))
const chosen = signal<string[] | null>(null) // null: those that usually apply
let asked = ''

// readSheets reads which sheets the open warp has.
export async function readSheets(): Promise<void> {
  const now = doc.value
  const of = now ? `${now.id} ${now.version}` : ''
  if (!now || of === asked) return
  if (asked.split(' ')[0] !== String(now.id)) chosen.value = null
  asked = of
  const answer = await askSheets(now.id)
  if (answer.is === 'done') sheets.value = answer.value
  else sheets.value = null
}

const isChosen = (sheet: Sheet): boolean => sheet.has && (chosen.value?.includes(sheet.name) ?? sheet.usual)

function toggle(sheet: Sheet): void {
  const all = sheets.value?.sheets ?? []
  chosen.value = all.filter((one) => (one.name === sheet.name ? !isChosen(one) : isChosen(one))).map((one) => one.name)
}

const pdf = (id: number, names: string[]): string => `/api/documents/${id}/sheets.pdf?${new URLSearchParams({ pages: names.join(','), paper: paper.value })}`

// SheetsToPrint are the sheets of this warp: chosen by name, opened as one file.
export function SheetsToPrint() {
  const now = doc.value
  const all = sheets.value?.sheets ?? []
  const some = all.filter(isChosen)
  if (!now) return null
  return (
    <section class="sheets">
      <h2>{w.sheets}</h2>
      <p class="soft">{w.sheetsSays}</p>
      {all.length === 0 || numbers.value?.sections.length === 0 ? (
        <p class="soft">{w.noSheets}</p>
      ) : (
        <>
          <ul class="sheet-list" role="list">
            {all.filter((sheet) => sheet.has).map((sheet) => (
              <SheetRow key={sheet.name} id={now.id} version={now.version} sheet={sheet} />
            ))}
          </ul>
          <Papers />
          <p class="buttons">
            {some.length > 0 && (
              <a class="strong" href={pdf(now.id, some.map((s) => s.name))} target="_blank" rel="noopener">
                {w.openPdf}
              </a>
            )}
            <span class="soft">{w.pages(some.reduce((n, s) => n + s.pages, 0))}</span>
          </p>
        </>
      )}
    </section>
  )
}

function SheetRow({ id, version, sheet }: { id: number; version: number; sheet: Sheet }) {
  return (
    <li>
      <a href={pdf(id, [sheet.name])} target="_blank" rel="noopener" aria-label={w.onePdf(sheet.name)}>
        <img src={`/api/documents/${id}/sheets.png?${new URLSearchParams({ pages: sheet.name, paper: paper.value, page: '1', v: String(version) })}`} alt={w.sheetAlt(sheet.name)} loading="lazy" />
      </a>
      <label class="tick">
        <input type="checkbox" checked={isChosen(sheet)} onChange={() => toggle(sheet)} />
        <span>{sheet.name}</span>
      </label>
      <p class="soft">
        {sheet.says}; {w.pages(sheet.pages)}
      </p>
    </li>
  )
}

function Papers() {
  return (
    <Select
      id="paper"
      class="paper"
      label={w.paper}
      value={paper.value}
      choices={(sheets.value?.papers ?? []).map((one) => [one, w.papers[one] ?? one])}
      set={(to) => {
        paper.value = to
        keep('paper', to)
      }}
    />
  )
}
