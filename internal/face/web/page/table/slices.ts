// Work in slices, so that a page which draws much still answers to every key.

// Clock is what slices are timed by and put off with: in the page performance.now and a task
// of its own, in tests what they like.
export type Clock = {
  now(): number // ms
  later(work: () => void): void
}

// budget is how long a slice goes on, in ms. With what a frame has to do besides, no task
// takes longer than 16 ms.
export const budget = 5

// inFrame is how long one goes on that is part of a frame, in ms: a frame has more to do.
export const inFrame = 2

// inSlices does work whose steps are short, a slice now and the others later, and gives what
// comes of it to done. What it returns stops it.
export function inSlices<V>(clock: Clock, work: Iterator<unknown, V>, done: (made: V) => void): () => void {
  let stopped = false
  const slice = (): void => {
    const from = clock.now()
    while (!stopped) {
      const step = work.next()
      if (step.done) return done(step.value)
      if (clock.now() - from >= budget) return clock.later(slice)
    }
  }
  slice()
  return () => {
    stopped = true
  }
}
