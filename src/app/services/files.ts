import { layoutOf } from '../../scene/document.ts'
import { readGear, writeGear, type GearItem } from '../../scene/gear.ts'
import { writeFile } from '../../scene/writeFile.ts'
import type { App } from '../../state/app.ts'
import type { GearState, Outcome } from '../../ui/services.ts'
import type { StoreApi } from 'zustand/vanilla'
import { download, fileNameOf, shareOrDownload } from './download.ts'
import type { Keeper } from './keeper.ts'
import { releasePlan } from './release.ts'

const jsonBlob = (text: string): Blob => new Blob([text], { type: 'application/json' })

/** Files that leave the device and come to it. */
export const makeFiles = (app: App, keeper: Keeper, gear: StoreApi<GearState>) => {
  const layoutFile = (): { name: string; blob: Blob; title: string } => {
    const { document } = app.documents.getState()
    const { title } = layoutOf(document)
    return { name: fileNameOf(title, '.yard.json'), blob: jsonBlob(writeFile(document)), title }
  }
  const putGearList = async (items: readonly GearItem[]): Promise<void> => {
    gear.setState({ items })
    await keeper.putGear(items).catch(() => undefined)
  }
  return {
    putGearList,
    saveFile: (): Promise<Outcome> => {
      const { name, blob } = layoutFile()
      download(name, blob)
      void keeper.fileSaved()
      return Promise.resolve({ ok: true, said: { en: `Saved as ${name}.`, es: `Guardado como ${name}.` } })
    },
    shareFile: async (): Promise<Outcome> => {
      releasePlan(app, keeper, 'shared')
      const { name, blob, title } = layoutFile()
      const how = await shareOrDownload(name, blob, title)
      if (how !== 'cancelled') void keeper.fileSaved()
      return how === 'downloaded' ? { ok: true, said: { en: `This device has no share sheet; saved as ${name}.`, es: `Este equipo no tiene menú de compartir; guardado como ${name}.` } } : { ok: true }
    },
    saveEverything: async (): Promise<Outcome> => {
      const { text, refused } = await keeper.everything()
      download('stringyard-everything.json', jsonBlob(text))
      void keeper.fileSaved()
      if (refused.length === 0) return { ok: true, said: { en: 'Saved as stringyard-everything.json: layouts, points in time, gear, settings.', es: 'Guardado como stringyard-everything.json: planos, puntos en el tiempo, equipo, ajustes.' } }
      return { ok: false, reason: { en: `Saved, but not in the file: ${refused.map(({ en }) => en).join('; ')}.`, es: `Guardado, pero no está en el archivo: ${refused.map(({ es }) => es).join('; ')}.` } }
    },
    exportGear: (): Promise<Outcome> => {
      download('gear.json', jsonBlob(writeGear(gear.getState().items)))
      return Promise.resolve({ ok: true })
    },
    importGear: async (file: File): Promise<Outcome> => {
      const read = readGear(await file.text())
      if (!read.ok) {
        const [first] = read.issues
        return { ok: false, reason: { en: `${file.name}: ${first?.path ?? ''} ${first?.message.en ?? 'could not be read'}`, es: `${file.name}: ${first?.path ?? ''} ${first?.message.es ?? 'no se pudo leer'}` } }
      }
      await putGearList(read.gear)
      return { ok: true }
    },
  }
}
