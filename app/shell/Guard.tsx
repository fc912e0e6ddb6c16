import { Component, type ReactNode } from 'react'
import { Button } from '../ui/Button.tsx'

/** Keeps the page alive when a view fails: says so, and lets the person try again with everything as it was. */
export class Guard extends Component<{ children: ReactNode }, { failed: string | null }> {
  override state = { failed: null }

  static getDerivedStateFromError(error: unknown) {
    return { failed: error instanceof Error ? error.message : String(error) }
  }

  override render() {
    if (this.state.failed === null) return this.props.children
    return (
      <div className="broken" role="alert">
        <h1>This view has failed</h1>
        <p>The scenario is kept. What the browser said: {this.state.failed}</p>
        <Button onClick={() => this.setState({ failed: null })}>Show it again</Button>
      </div>
    )
  }
}
