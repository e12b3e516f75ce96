import { explain, numbers, open } from '../doc'
import { Set } from '../figure'
import type { Line, Section } from '../kinds_doc'
import { PressedFigure } from '../lines'
import { Term } from '../term'
import { termOfSection } from '../term_at'
import { words } from '../words'

type Props = { title: string; sections?: string[]; piece?: boolean; but?: string[] }

// Lines are figures of the reckoning under a heading: those of the sections named, and
// of the pieces where asked; without any named, all.
export function Lines({ title, sections, piece, but }: Props) {
  const all = numbers.value?.sections
  if (!all) return <Waiting title={title} />
  const wanted = (s: Section) => (!sections || sections.includes(s.id) || (piece === true && s.id.startsWith('pieces['))) && !but?.includes(s.id)
  const shown = all.filter(wanted)
  return (
    <section class="reckoning">
      <h2>{title}</h2>
      {shown.length === 0 ? <NoNumbers /> : shown.map((s) => <SectionLines key={s.id} section={s} big={s.id === 'glance'} unfold={sections !== undefined} />)}
    </section>
  )
}

const Waiting = ({ title }: { title: string }) => (
  <section class="reckoning">
    <h2>{title}</h2>
    <p class="soft">{words.reading}</p>
  </section>
)

export const NoNumbers = () => (
  <>
    <p class="title">{words.warp.noNumbers}</p>
    <p class="soft">{words.warp.noNumbersSays}</p>
  </>
)

// folded are sections that are wanted at the loom, and rarely before.
const folded = ['winding', 'raddle', 'sections', 'heddles', 'rest']

const isMark = (line: Line): boolean => line.id.includes('.marks[')

function SectionLines({ section, big, unfold }: { section: Section; big: boolean; unfold: boolean }) {
  const term = termOfSection(section.id)
  const marks = section.lines.filter(isMark)
  const lines = <Rows lines={section.lines.filter((line) => !isMark(line))} big={big} />
  if (folded.includes(section.id) && !unfold) return <Fold title={section.title} lines={section.lines} />
  return (
    <>
      <h3>{term ? <Term of={term}>{section.title}</Term> : section.title}</h3>
      {lines}
      {marks.length > 0 && <Fold title={words.warp.marks} lines={marks} />}
    </>
  )
}

const Rows = ({ lines, big }: { lines: Line[]; big: boolean }) => (
  <ul class={big ? 'lines big' : 'lines'} role="list">
    {lines.map((line) => (
      <LineRow key={line.id} line={line} />
    ))}
  </ul>
)

// Fold keeps lines under their heading until they are asked for.
const Fold = ({ title, lines }: { title: string; lines: Line[] }) => (
  <details>
    <summary>{title}</summary>
    <Rows lines={lines} big={false} />
  </details>
)

// LineRow is one figure; pressed, its working opens under it.
function LineRow({ line }: { line: Line }) {
  const isOpen = open.value.includes(line.id)
  return (
    <li>
      <PressedFigure says={line.says} value={line.value} id={line.id} isOpen={isOpen} press={() => explain(line.id)} />
      {line.note && (
        <p class="about soft">
          <Set text={line.note} />
        </p>
      )}
      {isOpen && <Working line={line} />}
    </li>
  )
}

function Working({ line }: { line: Line }) {
  if (!line.working) return <p class="working soft">{words.reading}</p>
  const [formula, ...more] = line.working
  return (
    <div class="working" role="region" aria-label={words.warp.explain(line.says)}>
      <p class="formula">
        <Set text={formula ?? ''} />
      </p>
      {more.map((text) => (
        <p key={text} class="soft">
          <Set text={text} />
        </p>
      ))}
    </div>
  )
}
