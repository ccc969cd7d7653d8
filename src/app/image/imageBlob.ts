import { zonesAt } from '../../derive/zones.ts'
import { uiText } from '../../messages/ui/text.ts'
import { drawImagePage } from '../../sheet/imagePage.ts'
import { pagePx } from '../../sheet/page.ts'
import type { App } from '../../state/app.ts'
import { pagePainters } from './painters.ts'
import { appOfPlan, planOf } from './plan.ts'

/** The page as PNG. Null where the device cannot make a canvas of that size: it then answers without an error. */
export const imageBlob = async (app: App, scale: 1 | 2 | 4): Promise<Blob | null> => {
  const plan = await planOf(app)
  const { site, profile, run, isSettled } = plan
  await document.fonts.ready
  const canvas = document.createElement('canvas')
  canvas.width = pagePx.widthPx * scale
  canvas.height = pagePx.heightPx * scale
  const context = canvas.getContext('2d')
  if (context === null) return null
  context.scale(scale, scale)
  const { language, phase, joint } = app.view.getState()
  const { layout, sticks } = site
  const when = new Intl.DateTimeFormat(language === 'es' ? 'es' : 'en-US', { dateStyle: 'medium', timeStyle: 'short' }).format(new Date())
  const joints = Math.max(1, sticks.stickCount - 1)
  const stage = uiText(`phase_${phase}`, { language, system: layout.displayUnits })
  const ofJoints = language === 'es' ? `junta ${joint} de ${joints}` : `joint ${joint} of ${joints}`
  drawImagePage(context, {
    site, profile, run, isSettled, zones: zonesAt(site, { phase, joint }),
    stageWords: phase === 'load' || phase === 'fuse' || phase === 'pull' ? `${stage}, ${ofJoints}` : stage,
    language, system: layout.displayUnits, when, ...pagePainters(appOfPlan(app, plan), scale),
  })
  return new Promise((resolve) => canvas.toBlob((blob) => resolve(blob !== null && blob.size > 2000 ? blob : null), 'image/png'))
}
