import type { Clock } from './slices'

// clock puts work off into tasks of their own, which a browser does not slow down.
export const clock: Clock = {
  now: () => performance.now(),
  later: (work) => {
    const channel = new MessageChannel()
    channel.port1.onmessage = work
    channel.port2.postMessage(0)
  },
}
