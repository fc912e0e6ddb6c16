import './style/index.css'
import { StrictMode } from 'react'
import { createRoot } from 'react-dom/client'
import { App } from './App.tsx'
import { registerOffline } from './offline/register.ts'
import { startKeeping } from './store/keep.ts'
import { startRunner } from './store/runner.ts'

startKeeping()
startRunner()
createRoot(document.getElementById('root')!).render(
  <StrictMode>
    <App />
  </StrictMode>,
)
registerOffline()
