import { partsOf, raised } from './typeset'

// Set shows a worded figure with its fractions set; they are read aloud as they came.
export function Set({ text }: { text: string }) {
  return (
    <>
      {partsOf(text).map((part) =>
        'text' in part ? (
          part.text
        ) : (
          <span class="fraction" role="img" aria-label={`${part.over}/${part.under}`}>
            {raised(part)}
          </span>
        ),
      )}
    </>
  )
}
