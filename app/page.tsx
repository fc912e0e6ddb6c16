import { StrictMode } from 'react'
import { createRoot } from 'react-dom/client'
import { App } from './App.tsx'
import { registerOffline } from './offline/register.ts'
import { dressStrategies } from './style/strategies.ts'

export function drawPage(root: HTMLElement) {
  dressStrategies()
  createRoot(root).render(
    <StrictMode>
      <App />
    </StrictMode>,
  )
  registerOffline()
}
