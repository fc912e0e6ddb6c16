/**
 * What the core is built of. A block holds constants and references to other blocks; what moves while a run goes on lies in blocks
 * of the class State. Fields are `f64` or references, so that the host can lay a tree of blocks over the memory of the compiled
 * core (`mirror.ts`), and so that going on from another run's state is one walk over its states. A flag is 0 or 1.
 */
export class Block {}

export class State extends Block {}
