// Where threads lie across a drawing. Places count threads from the left or the top of the
// drawing, from 0; lengths are in cells, the room that a thread takes in the mean.

export type Axis = {
  readonly n: number
  readonly edges: Float64Array | null // one more than threads, from 0; null: all as far apart
  readonly thick: Float32Array | null // of each thread within its place, as a share of it
}

// even is threads all as far apart.
export const even = (n: number): Axis => ({ n, edges: null, thick: null })

// Sized is what is known of the sizes of threads, in nanometres; 0 and null are unsaid.
export type Sized = { readonly thick: Float64Array | null; readonly apart: Float64Array | null }

// thinnest is the least that a thread is drawn of the mean: a place that is narrower could
// not be read. It is as on paper.
const thinnest = 0.3

// scaled is the axes of ends and picks to one scale, on which the mean of all places is a
// cell. A thread that says nothing is as its fellows are, or as all are.
export function scaled(warp: Sized, ends: number, weft: Sized, picks: number): [Axis, Axis] {
  const [across, down] = [placesOf(warp, ends), placesOf(weft, picks)]
  const all = mean([across, down])
  if (all === 0) return [even(ends), even(picks)]
  return [along(warp, across, all), along(weft, down, all)]
}

function placesOf({ thick, apart }: Sized, n: number): Float64Array {
  return Float64Array.from({ length: n }, (_, i) => Math.max(apart?.[i] || thick?.[i] || 0, 0))
}

// mean is the mean of what is said, 0 where nothing is.
function mean(lists: Float64Array[]): number {
  let [sum, n] = [0, 0]
  for (const list of lists) {
    for (const v of list) {
      if (v > 0) [sum, n] = [sum + v, n + 1]
    }
  }
  return n === 0 ? 0 : sum / n
}

function along(sized: Sized, places: Float64Array, all: number): Axis {
  const own = mean([places]) || all
  const edges = new Float64Array(places.length + 1)
  const thick = new Float32Array(places.length)
  for (const [i, said] of places.entries()) {
    const place = said || own
    const size = sized.thick?.[i] ?? 0
    edges[i + 1] = (edges[i] ?? 0) + Math.max(place / all, thinnest)
    thick[i] = size > 0 ? Math.min(size / place, 1) : 1
  }
  return { n: places.length, edges, thick }
}

// reversed is the axis from its other end.
export function reversed({ n, edges, thick }: Axis): Axis {
  const whole = edges?.[n] ?? 0
  return {
    n,
    edges: edges && Float64Array.from(edges, (_, i) => whole - (edges[n - i] ?? 0)),
    thick: thick && thick.slice().reverse(),
  }
}

const edgeOf = ({ n, edges }: Axis, i: number): number => (edges ? (edges[Math.min(Math.max(i, 0), n)] ?? 0) : Math.min(Math.max(i, 0), n))

// dotAt is the dot at which a thread begins, with cells of so many dots: a whole one, so
// that lines are sharp. Of n it is where the last ends.
export const dotAt = (axis: Axis, i: number, cell: number): number => Math.round(edgeOf(axis, i) * cell)

// threadAt is the thread that lies at a dot; the first or the last beyond them. Where cells
// are smaller than dots it is the last of those that begin there.
export function threadAt(axis: Axis, dot: number, cell: number): number {
  let [low, high] = [0, axis.n - 1]
  if (!axis.edges) {
    low = Math.min(Math.max(Math.floor((dot - 0.5) / cell), 0), Math.max(high, 0))
    high = Math.max(Math.min(Math.ceil((dot + 0.5) / cell), high), low)
  }
  while (low < high) {
    const middle = (low + high + 1) >> 1
    if (dotAt(axis, middle, cell) <= dot) low = middle
    else high = middle - 1
  }
  return Math.max(low, 0)
}

// threadsOver are the threads whose middle lies between two dots, as the first and the one
// after the last; at least the one that lies there. It is what a dot shows the mean of.
export function threadsOver(axis: Axis, from: number, to: number, cell: number): [number, number] {
  const first = middleFrom(axis, from / cell)
  const last = middleFrom(axis, to / cell)
  if (last > first) return [first, last]
  const one = Math.min(first, Math.max(axis.n - 1, 0))
  return [one, one + 1]
}

// middleFrom is the first thread whose middle lies at a length or after it.
function middleFrom(axis: Axis, length: number): number {
  if (!axis.edges) return Math.min(Math.max(Math.ceil(length - 0.5), 0), axis.n)
  let [low, high] = [0, axis.n]
  while (low < high) {
    const middle = (low + high) >> 1
    if ((edgeOf(axis, middle) + edgeOf(axis, middle + 1)) / 2 < length) low = middle + 1
    else high = middle
  }
  return low
}
