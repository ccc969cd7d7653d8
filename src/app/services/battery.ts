import type { StoreApi } from 'zustand/vanilla'
import type { StorageState } from '../../ui/services.ts'

export interface BatteryNow {
  /** 0 … 1. */
  levelRatio: number
  isCharging: boolean
}

/** The device's battery; tests use a stub. `hear` is called with what it is now and with every change. */
export interface BatteryPort {
  watch: (hear: (now: BatteryNow) => void) => void
}

const LOW_RATIO = 0.2

interface BatteryManager extends EventTarget {
  level: number
  charging: boolean
}

/** Where the browser tells of no battery, nobody is told. */
export const browserBattery = (): BatteryPort => ({
  watch: (hear) => {
    if (!('getBattery' in navigator) || typeof navigator.getBattery !== 'function') return
    const ask = navigator.getBattery.bind(navigator) as () => Promise<BatteryManager>
    void ask().then((battery) => {
      const tell = (): void => hear({ levelRatio: battery.level, isCharging: battery.charging })
      for (const name of ['levelchange', 'chargingchange']) battery.addEventListener(name, tell)
      tell()
    }).catch(() => undefined)
  },
})

/** Keeps the state of storage told whether the battery is below a fifth and not charging. */
export const watchBattery = (port: BatteryPort, storage: StoreApi<StorageState>): void =>
  port.watch(({ levelRatio, isCharging }) => {
    const isBatteryLow = !isCharging && levelRatio < LOW_RATIO
    if (storage.getState().isBatteryLow !== isBatteryLow) storage.setState({ isBatteryLow })
  })
