import { Component, type ReactNode } from 'react'
import { useUi, useWords, type Words } from '../context.tsx'
import type { Services } from '../services.ts'

interface BoundaryProps {
  name: string
  words: Words
  services: Services
  children: ReactNode
}

/** A part of the screen that fails leaves the others standing and offers to save a copy of the work. */
class Boundary extends Component<BoundaryProps, { failure: string | null }> {
  override state: { failure: string | null } = { failure: null }

  static getDerivedStateFromError(error: unknown): { failure: string } {
    return { failure: error instanceof Error ? error.message : String(error) }
  }

  override render(): ReactNode {
    const { failure } = this.state
    const { name, words, services, children } = this.props
    if (failure === null) return children
    return (
      <div className="region-failed" role="alert">
        <p><strong>{words.say('regionFailed', { name })}</strong></p>
        <p className="quiet-text">{failure}</p>
        <div className="buttons">
          <button type="button" className="primary" onClick={() => void services.saveFile()}>{words.say('saveCopy')}</button>
          <button type="button" onClick={() => this.setState({ failure: null })}>{words.say('tryAgain')}</button>
        </div>
      </div>
    )
  }
}

export const Region = ({ name, children }: { name: string; children: ReactNode }): ReactNode => {
  const words = useWords()
  const { services } = useUi()
  return <Boundary name={name} words={words} services={services}>{children}</Boundary>
}
