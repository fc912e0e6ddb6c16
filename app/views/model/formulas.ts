/** The closed forms that bound simplifications, by id; what the symbols stand for is said where they are first used. */
import { type Block, tex } from './section.ts'

export const FORMULAS: Record<string, Block> = {
  ripple: tex`ΔI = \frac{U}{4\,L\,f_i},\qquad F = \frac{K_m\,ΔI}{2},\qquad F_k = \frac{k_c\,F}{(M + m_J)\,(2π\,f_i)^2}`,
  'dead-time': tex`ΔU = U\,f_i\,t_d`,
  reach: tex`ΔF = \frac{\dd F}{\dd x}\,δ`,
  guide: tex`F_b = 2\,µ_g\,F\,\frac{h}{l_g},\qquad h = l_g`,
  support: tex`ΔF = µ_s\,m\,g`,
  'lumped-part': tex`f = \frac{1}{2π}\,\sqrt{\frac{k_J}{M + m_J}}`,
  rotation: tex`h = \frac{4}{3}\,\frac{µ_s\,F\,r_p}{m\,a_p}`,
  'pad-shear': tex`ξ = \frac{m\,a_p}{2\,s_G\,k_p}`,
  'hand-over': tex`m\,a_p\left(1 + \mathrm{e}^{-π D/\sqrt{1 - D^2}}\right)`,
  copper: tex`\frac{\left(1 + α_Cu\,(T_max - T_ref)\right)\left(1 + α_Cu\,(T_ref - T_20)\right)}{1 + α_Cu\,(T_max - T_20)} - 1`,
  'other-losses': tex`P_F = (F_c + b\,v)\,v,\qquad P_Cu = R\,I_c^2`,
  'current-delay': tex`Δφ = \frac{ω_i}{2\,f_i}`,
  encoder: tex`ΔF = \frac{\dd F}{\dd x}\,Δx`,
}
