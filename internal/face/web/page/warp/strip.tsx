import { numbers } from '../doc'
import { Set } from '../figure'
import { words } from '../words'

// shown are the figures that most depends on: how long, how many, how wide.
const shown = ['warp.wound', 'ends.wound', 'width.occupied'] as const

// Strip keeps what a warp comes to in sight where there is no room for it beside the fields.
// The figures are read out where they stand in full.
export function Strip() {
  const glance = numbers.value?.sections.find((section) => section.id === 'glance')
  if (!glance) return null
  return (
    <ul class="strip" role="list" aria-hidden="true">
      {shown.map((id) => {
        const line = glance.lines.find((one) => one.id === id)
        return line ? (
          <li key={id}>
            <Set text={line.value.replace(/ \(.*\)$/, '')} /> <span class="soft">{words.warp.strip[id]}</span>
          </li>
        ) : null
      })}
    </ul>
  )
}
