import { useEffect, useState, type ReactNode } from 'react'
import { Markdown } from '../common/markdown.tsx'
import { Panel } from '../common/Panel.tsx'
import { useUi, useWords } from '../context.tsx'

/** The page of a check, kept with the app: formula, source, what to do. */
export const WhyPanel = ({ checkId, onClose }: { checkId: string; onClose: () => void }): ReactNode => {
  const { say } = useWords()
  const [page, setPage] = useState(checkId)
  return (
    <Panel title={say('whyTitle')} onClose={onClose} wide foot={page === checkId ? undefined : <button type="button" onClick={() => setPage(checkId)}>{say('back')}</button>}>
      <Page key={page} page={page} onPage={setPage} />
    </Panel>
  )
}

const Page = ({ page, onPage }: { page: string; onPage: (page: string) => void }): ReactNode => {
  const { say } = useWords()
  const { services } = useUi()
  const [source, setSource] = useState<string | null>(null)
  useEffect(() => {
    let isCurrent = true
    services.whyPage(page).then((text) => { if (isCurrent) setSource(text) }, () => { if (isCurrent) setSource(say('whyMissing')) })
    return () => { isCurrent = false }
  }, [page, services, say])
  return source === null ? <p>{say('working')}</p> : <div className="page"><Markdown source={source} onPage={onPage} /></div>
}
