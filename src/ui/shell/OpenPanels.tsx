import { lazy, Suspense, type ReactNode } from 'react'
import { ArchPitPanel } from '../archPit/ArchPitPanel.tsx'
import { BowPanel } from '../bow/BowPanel.tsx'
import { Panel } from '../common/Panel.tsx'
import { usePanels, useUi, useView, useWords } from '../context.tsx'
import { Margin } from '../findings/Margin.tsx'
import { WhyPanel } from '../findings/WhyPanel.tsx'
import { GearPanel } from '../gear/GearPanel.tsx'
import { PlaceByDistance } from '../items/ItemList.tsx'
import { AboutPanel, KeysPanel } from '../title/AboutPanel.tsx'
import { IncomingPanel } from '../share/IncomingPanel.tsx'
import { JobPanel } from '../title/JobPanel.tsx'
import { LayoutsPanel } from '../title/LayoutsPanel.tsx'
import { LimitsPanel } from '../title/LimitsPanel.tsx'
import { SettingsPanel, UnitsPanel } from '../title/SettingsPanel.tsx'
import { ImagePanel, SharePanel } from '../title/SharePanels.tsx'
import { ClockPanel } from '../clock/ClockPanel.tsx'
import { FusionCardPanel } from '../clock/FusionCardPanel.tsx'
import { MobilisingPanel } from '../clock/MobilisingPanel.tsx'
import { MorePanel } from '../more/MorePanel.tsx'
import { StringsPanel } from '../strings/StringsPanel.tsx'
import { ZonePanel } from '../zones/ZonePanel.tsx'
import { TitlePanel } from '../title/TitlePanel.tsx'

/** Readers of foreign files come with their panel. */
const LevelsPanel = lazy(async () => ({ default: (await import('../bringIn/LevelsPanel.tsx')).LevelsPanel }))
const PlanPanel = lazy(async () => ({ default: (await import('../bringIn/PlanPanel.tsx')).PlanPanel }))

interface PanelEntryProps {
  onClose: () => void
}

const NotesPanel = ({ onClose }: PanelEntryProps): ReactNode => {
  const { say } = useWords()
  return <Panel title={say('notesTitle')} onClose={onClose} wide><Margin /></Panel>
}

/** What goes on an empty place of the tape that was tapped. */
const PlaceAtPanel = ({ onClose }: PanelEntryProps): ReactNode => {
  const { say } = useWords()
  return <Panel title={say('placeNew')} onClose={onClose}><PlaceByDistance /></Panel>
}

const Levels = (props: PanelEntryProps): ReactNode => <Suspense><LevelsPanel {...props} /></Suspense>
const ForeignPlan = (props: PanelEntryProps): ReactNode => <Suspense><PlanPanel {...props} /></Suspense>

/** Panels by the name in `view.panel`; `items` is no dialog, it lies beside the plan. */
const panels: Readonly<Record<string, (props: PanelEntryProps) => ReactNode>> = {
  job: JobPanel, units: UnitsPanel, limits: LimitsPanel, layouts: LayoutsPanel, share: SharePanel, image: ImagePanel, about: AboutPanel,
  settings: SettingsPanel, keys: KeysPanel, gear: GearPanel, title: TitlePanel, notes: NotesPanel, placeAt: PlaceAtPanel,
  more: MorePanel, incoming: IncomingPanel, clock: ClockPanel, fusionCard: FusionCardPanel, mobilising: MobilisingPanel, bow: BowPanel, zones: ZonePanel, archPit: ArchPitPanel, strings: StringsPanel,
  levels: Levels, foreignPlan: ForeignPlan,
}

/** The open panel and the open page of a check. */
const OpenPanels = (): ReactNode => {
  const { app, panels: store } = useUi()
  const panel = useView((view) => view.panel)
  const whyCheckId = usePanels((state) => state.whyCheckId)
  const Shown = panel === null ? undefined : panels[panel]
  return (
    <>
      {Shown === undefined ? null : <Shown key={panel} onClose={() => { if (app.view.getState().panel === panel) app.view.setState({ panel: null }) }} />}
      {whyCheckId === null ? null : <WhyPanel key={whyCheckId} checkId={whyCheckId} onClose={() => store.setState({ whyCheckId: null })} />}
    </>
  )
}
export default OpenPanels
