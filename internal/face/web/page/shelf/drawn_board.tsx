import { useSignal } from '@preact/signals'
import { doc } from '../doc'

// DrawnBoard is the warping board of the open document to scale, where there is one to draw.
export function DrawnBoard({ title, alt }: { title: string; alt: string }) {
  const now = doc.value
  const missing = useSignal(0) // the version that has none
  if (!now || missing.value === now.version) return null
  return (
    <section>
      <h2>{title}</h2>
      <img class="board" src={`/api/documents/${now.id}/picture?of=board&v=${now.version}`} alt={alt} onError={() => (missing.value = now.version)} />
    </section>
  )
}
