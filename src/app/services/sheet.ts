import { layoutOf } from '../../scene/document.ts'
import type { App } from '../../state/app.ts'
import type { Outcome, SheetHooks, SheetWish } from '../../ui/services.ts'
import type { Keeper } from './keeper.ts'
import { releasePlan } from './release.ts'

/** What is drawn to be built from is noted as printed; tables and plans for other programs as shared. */
const noted = { pdf: 'printed', png: 'printed', svg: 'printed', csv: 'shared', dxf: 'shared', geojson: 'shared' } as const

/** Makes a sheet in parts of the app fetched when first asked for, and hands it over as a download. */
export const saveSheet = async (app: App, keeper: Keeper, wish: SheetWish, hooks: SheetHooks): Promise<Outcome> => {
  try {
    // First, so that the sheet carries the letter it is noted under.
    releasePlan(app, keeper, noted[wish.as])
    const { sheetFile } = await import('../sheet/writeSheet.ts')
    const file = await sheetFile(app, wish, hooks)
    if (file === null) return { ok: false, reason: { en: 'This device cannot draw a picture of that size; take PDF or SVG.', es: 'Este equipo no puede dibujar una imagen de ese tamaño; use PDF o SVG.' } }
    const { download, fileNameOf } = await import('./download.ts')
    const { title, revision } = layoutOf(app.documents.getState().document)
    download(fileNameOf(`${title} ${revision}`, file.ending), file.blob)
    return { ok: true }
  } catch (error) {
    if (hooks.signal.aborted) return { ok: true, said: { en: 'Cancelled: no sheet was made.', es: 'Cancelado: no se hizo ninguna hoja.' } }
    return { ok: false, reason: { en: `The sheet could not be made: ${error instanceof Error ? error.message : 'no reason given'}.`, es: `No se pudo hacer la hoja: ${error instanceof Error ? error.message : 'sin motivo'}.` } }
  }
}
