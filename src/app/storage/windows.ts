
/**
 * One writer a layout: a lock of the browser held as long as the layout is open. Other windows read and follow.
 * Messages on a channel a layout: `written` (read again), `letGo` (flush, release, become a reader).
 */
export interface WindowPort {
  /** Tries to become the writer; false where another window is. `lost`: the lock was taken away. */
  tryLock: (layoutId: string, lost: () => void) => Promise<boolean>
  /** Takes the lock by force after the writer was asked and did not answer. */
  steal: (layoutId: string, lost: () => void) => Promise<boolean>
  release: () => void
  say: (layoutId: string, message: 'written' | 'letGo') => void
  listen: (layoutId: string, hear: (message: string) => void) => () => void
}

const lockName = (layoutId: string): string => `stringyard/${layoutId}`

/** Locks and channels of the browser; where it has none, this window is the only one it knows of. */
export const browserWindows = (): WindowPort => {
  let release: (() => void) | null = null
  const hold = (layoutId: string, options: LockOptions, lost: () => void): Promise<boolean> =>
    new Promise((answer) => {
      const request = navigator.locks.request(lockName(layoutId), options, (lock) => {
        if (lock === null) {
          answer(false)
          return undefined
        }
        answer(true)
        return new Promise<void>((resolve) => {
          release = resolve
        })
      })
      // Rejected when another window steals it.
      request.catch(() => {
        release = null
        lost()
        answer(false)
      })
    })
  return {
    tryLock: (layoutId, lost) => (navigator.locks === undefined ? Promise.resolve(true) : hold(layoutId, { ifAvailable: true }, lost)),
    steal: (layoutId, lost) => (navigator.locks === undefined ? Promise.resolve(true) : hold(layoutId, { steal: true }, lost)),
    release: () => {
      release?.()
      release = null
    },
    say: (layoutId, message) => {
      const channel = new BroadcastChannel(lockName(layoutId))
      channel.postMessage(message)
      channel.close()
    },
    listen: (layoutId, hear) => {
      const channel = new BroadcastChannel(lockName(layoutId))
      channel.addEventListener('message', ({ data }: MessageEvent<string>) => hear(data))
      return () => channel.close()
    },
  }
}

/** A window alone in the world. */
export const noWindows = (): WindowPort => ({ tryLock: () => Promise.resolve(true), steal: () => Promise.resolve(true), release: () => undefined, say: () => undefined, listen: () => () => undefined })

