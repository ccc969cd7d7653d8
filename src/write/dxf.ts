/** The plan as DXF: layers by kind, metres. */
import { Colors, DxfWriter, LWPolylineFlags, point2d, point3d, Units } from '@tarikjabiri/dxf'
import type { SiteModel } from '../derive/types.ts'
import { planShapes } from './planShapes.ts'

/** Height of lettering, m: what a plan at 1:200 shows as 2.5 mm. */
const TEXT_M = 0.5

/** Signs that drawing programs read as orders (`%%d`, `^J`, `\U+`, `\P`) are parted, so that they stay text. */
const dxfText = (text: string): string => text.replace(/%(?=%)/g, '% ').replace(/\^(?! )/g, '^ ').replace(/\\/g, '/').slice(0, 250)
/** Names of layers may not hold these signs (DXF reference, symbol table names). */
const layerName = (text: string): string => text.replace(/[<>/\\":;?*|=,'`]/g, '-')

const colours: Readonly<Record<string, number>> = { 'zone red': Colors.Red, 'zone amber': Colors.Yellow, 'zone blue': Colors.Blue, string: Colors.Green, run: Colors.Green }

/**
 * Text of an ASCII DXF file (AC1021, UTF-8), $INSUNITS 6: metres.
 * Frame: the site's, moved to the map origin where the layout has one. Areas are closed polylines, each with its name beside it.
 */
export const dxfOf = (site: SiteModel): string => {
  const writer = new DxfWriter()
  writer.setUnits(Units.Meters)
  const { eastM, northM } = site.layout.mapOrigin ?? { eastM: 0, northM: 0 }
  const layers = new Set<string>()
  for (const { layer, text, as, points, at } of planShapes(site)) {
    const name = layerName(layer)
    if (!layers.has(name)) {
      layers.add(name)
      writer.addLayer(name, colours[layer] ?? Colors.White, 'Continuous')
    }
    const options = { layerName: name }
    if (as === 'point') writer.addPoint(points[0]!.xM + eastM, points[0]!.yM + northM, 0, options)
    else writer.addLWPolyline(points.map(({ xM, yM }) => ({ point: point2d(xM + eastM, yM + northM) })), { ...options, flags: as === 'area' ? LWPolylineFlags.Closed : LWPolylineFlags.None })
    if (text !== '') writer.addText(point3d(at.xM + eastM, at.yM + northM, 0), TEXT_M, dxfText(text), options)
  }
  return writer.stringify()
}
