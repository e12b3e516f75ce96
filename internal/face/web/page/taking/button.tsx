import { useRef } from 'preact/hooks'
import { words } from '../words'
import { type Into, take, taking } from './take'

// TakeButton is the button by which files are chosen. The field itself is out of sight.
export function TakeButton({ into, label }: { into: Into; label: string }) {
  const field = useRef<HTMLInputElement>(null)
  const chosen = () => {
    const files = [...(field.current?.files ?? [])]
    if (field.current) field.current.value = '' // the same file may be taken again once mended
    void take(files, into)
  }
  return (
    <>
      <input ref={field} hidden type="file" id="files" multiple aria-label={words.taking.choose} accept=".wif,.toml,.txt,text/plain" onChange={chosen} />
      <button type="button" class="plain" aria-disabled={taking.value} onClick={() => taking.value || field.current?.click()}>
        {label}
      </button>
    </>
  )
}
