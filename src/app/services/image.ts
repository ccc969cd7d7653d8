import type { App } from '../../state/app.ts'
import type { Outcome } from '../../ui/services.ts'

/** The layout as a PNG page; drawn in a part of its own, fetched when asked for. */
export const saveImage = async (app: App, scale: 1 | 2 | 4): Promise<Outcome> => {
  const { imageBlob } = await import('../image/imageBlob.ts')
  const blob = await imageBlob(app, scale)
  if (blob === null) return { ok: false, reason: { en: `This device cannot draw the image at ${scale}×; try a smaller one.`, es: `Este equipo no puede dibujar la imagen a ${scale}×; pruebe una más chica.` } }
  const { download, fileNameOf } = await import('./download.ts')
  const { layoutOf } = await import('../../scene/document.ts')
  const { title, revision } = layoutOf(app.documents.getState().document)
  download(fileNameOf(`${title} ${revision}`, '.png'), blob)
  return { ok: true }
}
