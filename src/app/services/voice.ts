import { createStore } from 'zustand/vanilla'
import type { Voice, VoiceState } from '../../ui/services.ts'

/** A voice of the device, as the browser lists it. */
export interface VoiceChoice {
  lang: string
  localService: boolean
}

/** The part of the browser it needs; tests hand in their own. Null where there is none. */
export interface VoiceHost<V extends VoiceChoice = VoiceChoice> {
  voices: () => readonly V[]
  onVoices: (change: () => void) => void
  /** Says one line after what is waiting. `ended` is called once, however it ended. */
  speak: (line: { text: string; voice: V; language: string }, ended: () => void) => void
  cancel: () => void
}

export const browserVoice = (): VoiceHost<SpeechSynthesisVoice> | null => {
  if (!('speechSynthesis' in window)) return null
  const { speechSynthesis } = window
  return {
    voices: () => speechSynthesis.getVoices(),
    onVoices: (change) => speechSynthesis.addEventListener?.('voiceschanged', change),
    speak: ({ text, voice, language }, ended) => {
      const line = new SpeechSynthesisUtterance(text)
      line.voice = voice
      line.lang = voice.lang === '' ? language : voice.lang
      // Slower than talk: people stand outdoors.
      line.rate = 0.9
      line.addEventListener('end', ended)
      line.addEventListener('error', ended)
      speechSynthesis.speak(line)
    },
    cancel: () => speechSynthesis.cancel(),
  }
}

const languageOf = (lang: string): string => lang.slice(0, 2).toLowerCase()

/** Reads lines aloud, each in a voice of its own language. Only voices that lie on the device count: there may be no signal. */
export const makeVoice = <V extends VoiceChoice>(host: VoiceHost<V> | null): Voice => {
  const store = createStore<VoiceState>()(() => ({ en: false, es: false, isReading: false }))
  const voiceFor = (language: string): V | undefined => host?.voices().find((voice) => voice.localService && languageOf(voice.lang) === language)
  const look = (): void => store.setState({ en: voiceFor('en') !== undefined, es: voiceFor('es') !== undefined })
  look()
  host?.onVoices(look)
  let reading = 0
  return {
    store,
    say: (lines) => {
      if (host === null) return
      host.cancel()
      const [mine, spoken] = [(reading += 1), lines.flatMap((line) => {
        const voice = voiceFor(line.language)
        return voice === undefined || line.text === '' ? [] : [{ ...line, voice }]
      })]
      store.setState({ isReading: spoken.length > 0 })
      let left = spoken.length
      for (const line of spoken) {
        host.speak(line, () => {
          left -= 1
          if (left === 0 && mine === reading) store.setState({ isReading: false })
        })
      }
    },
    hush: () => {
      reading += 1
      host?.cancel()
      store.setState({ isReading: false })
    },
  }
}
