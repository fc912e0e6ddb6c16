import { keepsTheLaws } from './quarter.ts'

keepsTheLaws(2)
