import { State } from '../../core/block.ts'

/** What moves of a part between two jaws, and what has become of it. */
export class GripState extends State {
  /** Shift of the part along the grip [m], and its speed [m/s]. */
  shift: f64 = 0
  shiftSpeed: f64 = 0
  /** Force at the near and the far contact [N], the highest of each in the last period, and both at its end. */
  nearForce: f64 = 0
  farForce: f64 = 0
  nearMost: f64 = 0
  farMost: f64 = 0
  normal: f64 = 0
  /** Highest force at either contact so far [N] and when [s]. */
  peak: f64 = 0
  peakTime: f64 = NaN
  /** First touch [s], the jaw's speed [m/s] and travel [m] there; NaN: not yet. */
  contactTime: f64 = NaN
  contactSpeed: f64 = NaN
  contactTravel: f64 = NaN
  /** When the part broke [s], and whether at the far contact. */
  crackTime: f64 = NaN
  crackSeen: f64 = NaN
  crackFar: f64 = 0
  /** When the jaws met through a part that was whole until then [s]; it counts as broken. */
  met: f64 = NaN
  /** When a force first exceeded the limit for marks or dents [s]. */
  markTime: f64 = NaN
  /** Contacts whose force has exceeded the mark limit. */
  nearMarked: f64 = 0
  farMarked: f64 = 0
  /** The part's support is gone; the part has left the jaws. */
  hanging: f64 = 0
  out: f64 = 0
  /** When the support went, the part first slid, was lost past the pads, left the jaws in any way, was free again [s]. */
  lift: f64 = NaN
  slip: f64 = NaN
  drop: f64 = NaN
  lost: f64 = NaN
  free: f64 = NaN
  /** When it hung and a contact was open [s]. */
  loose: f64 = NaN
  /** What held it over what pulled on it as the jaws were to open. */
  parted: f64 = Infinity
  /** What friction amounts to for each newton of normal force, over the coefficients as given. */
  gripped: f64 = 1
  /** What pulls on the part in this period [m/s²]. */
  along: f64 = 0
  down: f64 = 0
  side: f64 = 0
}

/** What the figures of a grip are made from. */
export class GripSums extends State {
  /** Least mean force of the two contacts while the part hangs in them [N]; Infinity: it never does. */
  weakest: f64 = Infinity
  /** Least and most force at either contact while the arm moves [N]. */
  least: f64 = Infinity
  most: f64 = -Infinity
  /** Most force needed at one contact [N]. */
  required: f64 = 0
  /**
   * Least of what holds over what works against it: of both contacts' force over what pushes the part from one to the other, of what
   * friction could carry over what the pads carry while they stick, and over what pulls across.
   */
  closed: f64 = Infinity
  stuck: f64 = Infinity
  across: f64 = Infinity
}
