import { describe, expect, it } from 'vitest'
import { makeVoice, type VoiceHost } from '../../src/app/services/voice.ts'
import { makeKeepAwake, type WakeLockHost } from '../../src/app/services/wakeLock.ts'

const settle = (): Promise<void> => new Promise((resolve) => setTimeout(resolve, 0))

/** A screen with a lock that counts; stands in for the browser's, which no test can look at. */
const screen = () => {
  const state = { held: 0, asked: 0, isVisible: true, change: null as null | (() => void) }
  const host: WakeLockHost = {
    request: () => {
      state.asked += 1
      state.held += 1
      return Promise.resolve({ release: () => { state.held -= 1; return Promise.resolve() } })
    },
    isVisible: () => state.isVisible,
    onVisibility: (change) => { state.change = change; return () => { state.change = null } },
  }
  return { state, host }
}

describe('the screen kept awake', () => {
  it('is held once for two holders and let go with the last', async () => {
    const { state, host } = screen()
    const keepAwake = makeKeepAwake(host)
    const [one, two] = [keepAwake(), keepAwake()]
    await settle()
    expect(state.held).toBe(1)
    one()
    await settle()
    expect(state.held).toBe(1)
    two()
    two()
    await settle()
    expect(state.held).toBe(0)
    expect(state.change).toBeNull()
  })
  it('is asked for again when the page comes back into sight, not while it is away', async () => {
    const { state, host } = screen()
    const release = makeKeepAwake(host)()
    state.isVisible = false
    state.change!()
    expect(state.asked).toBe(1)
    state.isVisible = true
    state.change!()
    await settle()
    expect(state.asked).toBe(2)
    expect(state.held).toBe(1)
    release()
    await settle()
    expect(state.held).toBe(0)
  })
  it('does nothing where the browser has no lock or refuses it', async () => {
    const { host } = screen()
    makeKeepAwake({ ...host, request: undefined })()()
    makeKeepAwake({ ...host, request: () => Promise.reject(new Error('battery')) })()()
    await settle()
  })
})

/** Voices that never end by themselves: the test says when. */
const voices = (list: { lang: string; localService: boolean }[]) => {
  const said: { text: string; lang: string }[] = []
  const ends: (() => void)[] = []
  let cancelled = 0
  let change: () => void = () => undefined
  const host: VoiceHost = {
    voices: () => list, onVoices: (heard) => { change = heard }, cancel: () => { cancelled += 1 },
    speak: ({ text, voice }, ended) => { said.push({ text, lang: voice.lang }); ends.push(ended) },
  }
  return { host, said, ends, list, cancelled: () => cancelled, change: () => change() }
}

describe('reading aloud', () => {
  it('uses a voice of the line’s language that lies on the device', () => {
    const { host, said } = voices([{ lang: 'es-ES', localService: false }, { lang: 'es-MX', localService: true }, { lang: 'en_US', localService: true }])
    const voice = makeVoice(host)
    expect(voice.store.getState()).toEqual({ en: true, es: true, isReading: false })
    voice.say([{ text: 'Stay out.', language: 'en' }, { text: 'No entre.', language: 'es' }])
    expect(said).toEqual([{ text: 'Stay out.', lang: 'en_US' }, { text: 'No entre.', lang: 'es-MX' }])
  })
  it('is reading until its last line has ended, and a line cut off does not end the next', () => {
    const { host, ends } = voices([{ lang: 'en-US', localService: true }])
    const voice = makeVoice(host)
    voice.say([{ text: 'one', language: 'en' }, { text: 'two', language: 'en' }])
    ends[0]!()
    expect(voice.store.getState().isReading).toBe(true)
    voice.say([{ text: 'three', language: 'en' }])
    ends[1]!()
    expect(voice.store.getState().isReading).toBe(true)
    ends[2]!()
    expect(voice.store.getState().isReading).toBe(false)
  })
  it('passes over a line it has no voice for and says that it has none', () => {
    const { host, said, list, change } = voices([{ lang: 'es-MX', localService: false }])
    const voice = makeVoice(host)
    voice.say([{ text: 'No entre.', language: 'es' }])
    expect(said).toEqual([])
    expect(voice.store.getState()).toEqual({ en: false, es: false, isReading: false })
    list.push({ lang: 'es-MX', localService: true })
    change()
    expect(voice.store.getState().es).toBe(true)
  })
  it('is quiet without a speech engine', () => {
    const voice = makeVoice(null)
    voice.say([{ text: 'Stay out.', language: 'en' }])
    voice.hush()
    expect(voice.store.getState()).toEqual({ en: false, es: false, isReading: false })
  })
})
