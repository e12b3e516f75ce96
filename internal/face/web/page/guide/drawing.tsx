import type { ComponentChildren } from 'preact'
import { useId } from 'preact/hooks'
import { partsOf, raised } from '../typeset'

type Props = { title: string; width?: number; height: number; children: ComponentChildren }

// Drawing is a small drawing of ours, in the colours of the page. Its title is for those
// who do not see it.
export function Drawing({ title, width = 350, height, children }: Props) {
  const id = useId()
  return (
    <svg class="drawing" width={width} height={height} viewBox={`0 0 ${width} ${height}`} role="img" aria-labelledby={id}>
      <title id={id}>{title}</title>
      {children}
    </svg>
  )
}

type SaysProps = { x: number; y: number; at?: 'start' | 'middle' | 'end'; soft?: boolean; text: string; figure?: string }

const set = (text: string): string => partsOf(text).map((part) => ('text' in part ? part.text : raised(part))).join('')

// Says is a text in a drawing; figure is its id in the reckoning.
export const Says = ({ x, y, at = 'start', soft, text, figure }: SaysProps) => (
  <text x={x} y={y} text-anchor={at} class={soft ? 'soft' : undefined} data-figure={figure}>
    {set(text)}
  </text>
)

export const upTo = (n: number): number[] => Array.from({ length: n }, (_, i) => i)
