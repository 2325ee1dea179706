import {setFlagsFromString} from 'node:v8'

/**
 * Let the engine wait longer before it compiles what runs often. A report takes a few seconds, in which most code runs
 * a few times: what the engine compiles, on threads of its own, it hardly uses, and on two cores these threads stand in
 * the way of ours. A build of the example takes a fifth less time so, its statistics no more than before.
 *
 * The budget is counted in bytes of code run; 135,168 is the engine's own. It decides when, never what comes out, and
 * holds for all threads. Any flag makes the engine distrust what Node compiled beforehand of itself: call this when
 * modules are loaded and threads started. The flag belongs to one version of the engine, the one of Node 20; others are
 * left alone.
 */
export function compileLater(): void {
  if (process.versions.v8.startsWith('11.3.')) setFlagsFromString('--interrupt-budget=600000')
}
