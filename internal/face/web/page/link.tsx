import type { ComponentChildren } from 'preact'
import { addressOf, go, type Place } from './place'

type Props = { to: Place; class?: string; current?: boolean; label?: string; children: ComponentChildren }

// Link leads to another page of sley without loading it anew; the browser's own ways to
// open a link elsewhere stay.
export function Link({ to, current, label, children, ...more }: Props) {
  return (
    <a
      href={addressOf(to)}
      aria-current={current ? 'page' : undefined}
      aria-label={label}
      {...more}
      onClick={(event) => {
        if (event.ctrlKey || event.metaKey || event.shiftKey || event.altKey || event.button !== 0) return
        event.preventDefault()
        go(to)
      }}
    >
      {children}
    </a>
  )
}
