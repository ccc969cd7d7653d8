/** Keeps the screen from going dark while somebody reads it from a distance. */

/** The part of the browser it needs; tests hand in their own. */
export interface WakeLockHost {
  /** Undefined where the browser has none. */
  request: (() => Promise<{ release: () => Promise<unknown> }>) | undefined
  isVisible: () => boolean
  /** Calls back whenever the page comes into sight or leaves it; returns how to stop. */
  onVisibility: (change: () => void) => () => void
}

export const browserWakeLock = (): WakeLockHost => ({
  request: 'wakeLock' in navigator ? () => navigator.wakeLock.request('screen') : undefined,
  isVisible: () => document.visibilityState === 'visible',
  onVisibility: (change) => {
    document.addEventListener('visibilitychange', change)
    return () => document.removeEventListener('visibilitychange', change)
  },
})

/**
 * Holds the screen awake until the returned function is called; several holders share one lock. The browser takes the
 * lock away whenever the page is out of sight, so it is asked for again when it comes back. Where the browser has no
 * lock or refuses one (battery saver), nothing happens and nothing is said.
 */
export const makeKeepAwake = (host: WakeLockHost): (() => () => void) => {
  const holders = new Set<symbol>()
  let lock: Promise<{ release: () => Promise<unknown> } | null> | null = null
  let stopListening: (() => void) | null = null
  const take = (): void => {
    if (holders.size === 0 || host.request === undefined || !host.isVisible()) return
    drop()
    lock = host.request().catch(() => null)
  }
  const drop = (): void => {
    const held = lock
    lock = null
    void held?.then((one) => one?.release()).catch(() => undefined)
  }
  return () => {
    const holder = Symbol('awake')
    holders.add(holder)
    if (holders.size === 1) {
      stopListening = host.onVisibility(take)
      take()
    }
    return () => {
      if (!holders.delete(holder) || holders.size > 0) return
      stopListening?.()
      stopListening = null
      drop()
    }
  }
}
