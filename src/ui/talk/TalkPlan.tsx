import { useEffect, useRef, type PointerEvent, type ReactNode } from 'react'
import type { Zone } from '../../derive/zones.ts'
import { useSite, useView } from '../context.tsx'
import { useSize } from '../shell/useSize.ts'
import { cssTheme } from '../theme/cssTheme.ts'
import { pictureMatrix, siteAt, talkPictureSvg, type TalkPicture } from './planPicture.ts'
import { useTalk } from './talkContext.tsx'

interface TalkPlanProps {
  chosen: Zone | null
  title: string
  /** Spot being put somewhere. */
  ringedId?: string | null
  /** Where the picture was tapped, site frame. */
  onTap?: ((at: { xM: number; yM: number }) => void) | undefined
}

/** The plan of the stage with one zone brought out, as large as its box. */
export const TalkPlan = ({ chosen, title, ringedId = null, onTap }: TalkPlanProps): ReactNode => {
  const box = useRef<HTMLDivElement>(null)
  const measured = useSize(box, true)
  // Without a size while the dialog is not open yet.
  const size = measured !== null && measured.widthPx > 0 && measured.heightPx > 0 ? measured : null
  const { zones, spots } = useTalk()
  const site = useSite((state) => state.site)
  const profile = useSite((state) => state.profile)
  const isTurned = useView((view) => view.turned)
  const picture: TalkPicture | null = size === null ? null : { site, profile, zones, chosen, spotIds: new Set(spots.map(({ item }) => item.id)), ringedId, isTurned, ...size, theme: cssTheme }
  const isAsking = onTap !== undefined
  useEffect(() => { if (isAsking) box.current?.scrollIntoView({ block: 'nearest' }) }, [isAsking])
  const tap = (event: PointerEvent<HTMLDivElement>): void => {
    if (picture === null || onTap === undefined) return
    const { left, top } = event.currentTarget.getBoundingClientRect()
    onTap(siteAt(pictureMatrix(picture), event.clientX - left, event.clientY - top))
  }
  // The markup is made by our own writer, which escapes every text.
  return <div className="talk-plan" ref={box} data-tap={isAsking} onPointerUp={tap} dangerouslySetInnerHTML={{ __html: picture === null ? '' : talkPictureSvg(picture, title) }} />
}
