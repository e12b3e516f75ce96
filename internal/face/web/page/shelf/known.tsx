import type { Figure } from '../kinds'
import { FigureLines } from '../lines'
import { words } from '../words'

const isSystem = (figure: Figure): boolean => figure.id.startsWith('systems[')

// Known are the figures of a yarn, its number in every count system folded away.
export function Known({ of }: { of: readonly Figure[] }) {
  const systems = of.filter(isSystem)
  return (
    <>
      <FigureLines of={of.filter((figure) => !isSystem(figure))} />
      {systems.length > 0 && (
        <details>
          <summary>{words.shelf.systems}</summary>
          <FigureLines of={systems} />
        </details>
      )}
    </>
  )
}
